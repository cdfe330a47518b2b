/** How far the coolant stays under the boiling point of its mix at each height: a cap holds a gauge pressure. */
import { pressureAt } from '../../air/index.ts';
import type { Airplane } from '../../airplane/index.ts';
import { BOILING_POINT_U, boilingUnderCap, CAP_SHARE, HOTTEST_SPOT } from '../../models/index.ts';
import { combineUncertainty } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import type { ResultQuantity } from '../../results/index.ts';
import { type Answer, nameOf, spanOf } from './answer.ts';
import { correctedAt, onHotDay, type Reference } from './corrected.ts';

/**
 * Least margin to boiling over a climb on the hot day.
 * @param one coolant of a climb, object
 * @param airplane the description, or undefined
 * @param reference hot day, scatter and sensors, object
 * @returns the quantity, null valued where the margin is withheld or mix or cap are not known; null for other parts
 * @throws OutOfRange when a height is beyond any airplane's
 */
export function boilingMargin(
  one: Answer,
  airplane: Airplane | undefined,
  reference: Reference,
): ResultQuantity | null {
  if (one.course.part !== 'coolant') return null;
  const base = {
    name: 'boiling-margin',
    unit: 'dK',
    conditions: { channel: one.course.quantity, climb: one.course.way.label, reference: reference.law.words },
  };
  const none = (flags: Flag[]) => ({ ...base, value: null, u95: null, parts: {}, flags });
  const cap = airplane?.cooling.capPressure?.si;
  const mix = airplane?.cooling.coolant;
  if (cap === undefined || mix === undefined) {
    const lacks = [cap === undefined ? 'cooling.capPressure' : '', mix === undefined ? 'cooling.coolant' : ''];
    const words = lacks.filter(Boolean).join(' and ');
    return none([
      flag('not-resolved', `boiling: the description lacks ${words}; enter it on the Airplane page`, spanOf(one)),
    ]);
  }
  if (!one.counts || !one.hottest) return none(one.flags);
  try {
    const { way, T } = one.course;
    let [at, least] = [one.peak.at, Number.POSITIVE_INFINITY];
    for (let i = 0; i < T.length; i += 1) {
      if (one.regimes[i] !== 'fully-open' || way.airRead[i] !== 1 || Number.isNaN(T[i] ?? Number.NaN)) continue;
      const left =
        boilingUnderCap(mix, cap, pressureAt(way.height[i] ?? 0)).sensor - onHotDay(one.course, i, reference.law).value;
      if (left < least) [at, least] = [i, left];
    }
    const under = boilingUnderCap(mix, cap, pressureAt(way.height[at] ?? 0));
    const corrected = correctedAt(one.course, at, reference);
    const doubt = combineUncertainty([
      ...corrected.sources,
      { part: 'fit', u: BOILING_POINT_U, nu: Number.POSITIVE_INFINITY },
      { part: 'calibration', u: under.capU, nu: 50 },
    ]);
    return {
      ...base,
      conditions: {
        ...base.conditions,
        'at-seconds': { value: way.t[at] ?? 0, unit: 's' },
        'pressure-altitude': { value: way.height[at] ?? 0, unit: 'm' },
        'boiling-temperature': { value: under.boils, unit: 'K' },
        'hot-day-air': { value: corrected.hotAir, unit: 'K' },
      },
      value: under.sensor - corrected.value,
      u95: doubt.u95,
      interval: [
        under.sensor - corrected.value - doubt.u95 - corrected.powerAllowance,
        under.sensor - corrected.value + doubt.u95 + corrected.startAllowance,
      ],
      parts: doubt.parts,
      flags: [
        flag(
          'assumed-value',
          `boiling, ${nameOf(one)}: the hottest coolant taken as ${HOTTEST_SPOT} K over the sensor, the cap as within ${100 * CAP_SHARE} % of its marking and tight, published boiling points as good to ${BOILING_POINT_U} K (standard uncertainty); a cap that leaks takes it away`,
          spanOf(one),
        ),
      ],
    };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return none([flag('not-resolved', `boiling: ${error.message}`, spanOf(one))]);
  }
}
