/** How far a coolant temperature stays under the boiling point of the mix under its cap. */
import { pressureAt } from '../../air/index.ts';
import type { Airplane } from '../../airplane/index.ts';
import { BOILING_POINT_U, boilingUnderCap, CAP_SHARE, HOTTEST_SPOT } from '../../models/index.ts';
import { combineUncertainty, type UncertaintySource } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import type { ResultQuantity } from '../../results/index.ts';
import type { HotDayAnswer, HotReference } from './hot-day-margin.ts';

/**
 * Margin to boiling on the hot day of the condition that runs hottest.
 * @param answer its hot-day temperature, object
 * @param label which condition, text
 * @param reference the hot day, object
 * @param airplane the description, or undefined
 * @returns the quantity, null valued where the mix or the cap is not known, with its remarks
 */
export function boilingMargin(
  answer: HotDayAnswer,
  label: string,
  reference: HotReference,
  airplane: Airplane | undefined,
): ResultQuantity {
  const flags: Flag[] = [];
  const cap = airplane?.cooling.capPressure?.si;
  const mix = airplane?.cooling.coolant;
  const base = {
    name: 'boiling-margin',
    unit: 'dK',
    conditions: { segment: label, 'hot-day-air': { value: reference.air, unit: 'K' } },
  };
  if (cap === undefined || mix === undefined) {
    const lacks = [cap === undefined ? 'cooling.capPressure' : '', mix === undefined ? 'cooling.coolant' : ''].filter(
      Boolean,
    );
    flags.push(
      flag('not-resolved', `boiling: the description lacks ${lacks.join(' and ')}; enter it on the Airplane page`),
    );
    return { ...base, value: null, u95: null, parts: {}, flags };
  }
  try {
    const { boils, sensor, capU } = boilingUnderCap(mix, cap, pressureAt(reference.height));
    const sources: UncertaintySource[] = [
      ...(['noise', 'calibration', 'repeatability', 'fit'] as const).map((part) => ({
        part,
        u: (answer.doubt.parts[part] ?? 0) / answer.doubt.k,
        nu: answer.doubt.nu,
      })),
      { part: 'fit' as const, u: BOILING_POINT_U, nu: Number.POSITIVE_INFINITY },
      { part: 'calibration' as const, u: capU, nu: 50 },
    ].filter((source) => source.u > 0);
    const doubt = combineUncertainty(sources);
    const value = sensor - answer.corrected;
    flags.push(
      flag(
        'assumed-value',
        `boiling: the hottest coolant taken as ${HOTTEST_SPOT} K over the sensor, the cap as within ${100 * CAP_SHARE} % of its marking and tight, published boiling points as good to ${BOILING_POINT_U} K (standard uncertainty); a cap that leaks takes it away`,
      ),
    );
    return {
      ...base,
      conditions: { ...base.conditions, 'boiling-temperature': { value: boils, unit: 'K' } },
      value,
      u95: doubt.u95,
      interval: [value - doubt.u95 - (answer.upper - answer.doubt.u95), value + doubt.u95],
      parts: doubt.parts,
      flags,
    };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    flags.push(flag('not-resolved', `boiling: ${error.message}`));
    return { ...base, value: null, u95: null, parts: {}, flags };
  }
}
