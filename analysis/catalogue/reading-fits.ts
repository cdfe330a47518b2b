/** Which airplanes have a quantity at all: a card asks for no reading that nothing aboard can give. */
import { baseName } from '../units/index.ts';
import type { Condition } from './condition.ts';
import * as fits from './fits.ts';

const FITS: Readonly<Record<string, Condition>> = {
  'coolant-temperature': fits.LIQUID,
  'coolant-temperature-in': fits.LIQUID,
  'coolant-pressure': fits.LIQUID,
  'cylinder-head-temperature': fits.AIR_COOLED,
  'fuel-pressure': fits.FUEL_PRESSURE_GAUGE,
  'fuel-flow': fits.FLOW_METER,
  'fuel-used': fits.FLOW_METER,
  'fuel-quantity': fits.QUANTITY_GAUGE,
  'manifold-pressure': { any: [fits.CONSTANT_SPEED, fits.ELECTRONIC_CONTROL] },
  'cowl-exit-position': fits.EXIT,
  'cooling-fan-state': fits.GROUND_FAN,
  'gear-position': fits.RETRACTABLE,
  'gear-current': fits.RETRACTABLE,
  'weight-on-wheels': fits.RETRACTABLE,
  'hydraulic-pressure': fits.HYDRAULICS,
  'flap-position': fits.FLAPS,
  'bus-voltage': fits.BATTERY,
  'bus-current': fits.BATTERY,
  'battery-current': fits.BATTERY,
  'bus-voltage#2': fits.SECOND_SUPPLY,
  'bus-current#2': fits.SECOND_SUPPLY,
  'battery-current#2': fits.TWO_BATTERIES,
  'bus-voltage#3': fits.ELECTRONIC_CONTROL,
  'engine-control-lane': fits.ELECTRONIC_CONTROL,
  'engine-control-fault': fits.ELECTRONIC_CONTROL,
  'engine-control-temperature': fits.ELECTRONIC_CONTROL,
  'transfer-valve-state': fits.TRANSFER,
  'fuel-quantity#2': { all: [fits.QUANTITY_GAUGE, { any: [fits.SEVERAL_SOURCES, fits.TRANSFER, fits.WING_TANKS] }] },
  'autopilot-mode': fits.AUTOPILOT,
  'reported-altitude': fits.TRANSPONDER,
  'localizer-deviation': fits.IFR,
  'glideslope-deviation': fits.IFR,
};

/**
 * The condition under which an airplane has a quantity.
 * @param name glossary name, with its index where it has one, text
 * @returns the condition, or undefined where every airplane may have it
 */
export function quantityFits(name: string): Condition | undefined {
  return FITS[name] ?? FITS[baseName(name)];
}
