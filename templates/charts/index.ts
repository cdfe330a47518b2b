/** The charts of a result, by its kind. A kind without an entry has its tables. */
import type { Result } from '../../analysis/results/index.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { Chart } from './chart.ts';
import { climbCharts } from './climb.ts';
import { coolingClimbCharts } from './cooling-climb.ts';
import { coolingFlightCharts } from './cooling-flight.ts';
import { heatingCharts } from './heating.ts';
import { positionErrorCharts } from './position-error.ts';

const CHARTS: Record<string, ((result: Result, units: InstrumentUnits) => Chart[]) | undefined> = {
  airspeed: positionErrorCharts,
  climb: climbCharts,
  'cooling-climb': coolingClimbCharts,
  'cooling-flight': coolingFlightCharts,
  'cooling-ground': heatingCharts,
};

/**
 * Charts of a result.
 * @param result as kept
 * @param units the airplane's instrument units, object
 * @returns descriptions, none where the kind has no drawing of its own
 */
export function chartsOf(result: Result, units: InstrumentUnits): Chart[] {
  return CHARTS[result.kind]?.(result, units) ?? [];
}
