/** What a chart draws of each temperature in its climb: as read, smoothed on the hot day, and the air. Nothing is computed from these. */
import type { HotDayLaw } from '../../models/index.ts';
import type { Answer } from './answer.ts';
import { onHotDay } from './corrected.ts';

/** A screen shows no more. */
const POINTS = 500;

/**
 * Traces for the charts of a result.
 * @param answers of all climbs, list
 * @param law the hot day, object
 * @returns plain lists, K, m and s, null where missing
 * @throws OutOfRange when a height is beyond any airplane's
 */
export function chartOf(answers: readonly Answer[], law: HotDayLaw) {
  return answers.map((one) => {
    const { course, peak, limits, counts, ahead, around } = one;
    const { way } = course;
    const every = Math.max(1, Math.ceil(around.t.length / POINTS));
    const places = Array.from({ length: Math.ceil(around.t.length / every) }, (_, i) => i * every);
    const end = way.t[way.t.length - 1] ?? 0;
    const inClimb = (i: number) => (i >= around.from && i - around.from < way.t.length ? i - around.from : null);
    const closed = (i: number) => {
      const at = inClimb(i);
      return at !== null && (one.regimes[at] === 'regulated' || one.regimes[at] === 'warming');
    };
    const hotDay = (i: number) => {
      const at = inClimb(i);
      return at === null || closed(i) ? null : rounded(onHotDay(course, at, law).value);
    };
    return {
      quantity: course.quantity,
      climb: way.label,
      file: way.file,
      fromSeconds: way.t[0] ?? 0,
      toSeconds: end,
      seconds: places.map((i) => rounded(around.t[i]) ?? 0),
      temperature: places.map((i) => rounded(around.T[i])),
      corrected: counts ? places.map(hotDay) : null,
      regulated: places.some(closed) ? places.map(closed) : null,
      air: places.map((i) => rounded(around.air[i])),
      peakSeconds: way.t[peak.at] ?? 0,
      highest: peak.highest,
      leastMarginSeconds: one.hottest ? (way.t[one.hottest.at] ?? 0) : null,
      caution: limits.caution,
      limit: limits.limit,
      ahead: ahead
        ? {
            seconds: ahead.seconds.map((s) => end + s),
            expected: ahead.expected.map((value) => rounded(value)),
            high: ahead.high.map((value) => rounded(value)),
          }
        : null,
    };
  });
}

const rounded = (value: number | undefined) =>
  value === undefined || !Number.isFinite(value) ? null : Math.round(value * 100) / 100;
