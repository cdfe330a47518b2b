/**
 * Where readings lie while an airplane runs or flies: narrower than what is plausible, so that a unit can be told from
 * the values, and one that is stated can be doubted (common practice, no source). Upper working values, SI through
 * the unit list.
 */
import { toSi } from '../../units/index.ts';

const range = (unit: string, low: number, high: number) => [toSi(low, unit), toSi(high, unit)] as const;

/** The 98th share of the values of a log in which the engine ran. */
export const USUAL_WHEN_RUNNING: Readonly<Record<string, readonly [number, number]>> = {
  'coolant-temperature': range('degC', 45, 135),
  'coolant-temperature-in': range('degC', 35, 130),
  'oil-temperature': range('degC', 40, 145),
  'cylinder-head-temperature': range('degC', 65, 300),
  'exhaust-gas-temperature': range('degC', 330, 980),
  'oil-pressure': range('bar', 0.8, 10),
  'manifold-pressure': range('hPa', 350, 2300),
};

/** The 98th share whether it ran or not. */
export const USUAL: Readonly<Record<string, readonly [number, number]>> = {
  'fuel-pressure': range('bar', 0.12, 5.5),
  'altimeter-setting': range('hPa', 930, 1060),
  'bus-voltage': range('V', 0, 33),
  'indicated-altitude': range('m', -450, 12_500),
  'pressure-altitude': range('m', -450, 12_500),
  'gps-altitude': range('m', -450, 12_500),
};
