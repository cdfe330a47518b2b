/** Rates no light airplane, and no sensor that works, can show (common practice, no source). SI a second. */
import { baseName, type Quantity } from '../../units/index.ts';

const BY_NAME: Readonly<Record<string, number>> = {
  'exhaust-gas-temperature': 100,
  'pressure-altitude': 150,
  'indicated-altitude': 150,
  'reported-altitude': 150,
  'gps-altitude': 150,
  'indicated-airspeed': 30,
  'calibrated-airspeed': 30,
  'true-airspeed': 30,
  'ground-speed': 30,
  'engine-speed': 50,
  // radians: some 600 m/s along a meridian
  latitude: 1e-4,
};

/**
 * The rate beyond which a change is a fault of the recording.
 * @param quantity glossary entry, object
 * @returns SI unit of the quantity a second, or null where real changes may be as fast
 * @source common practice, no source
 */
export function impossibleRate(quantity: Quantity): number | null {
  return BY_NAME[baseName(quantity.name)] ?? (quantity.dimension === 'temperature' ? 15 : null);
}
