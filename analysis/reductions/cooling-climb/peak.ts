/** The peak of a temperature in a climb: the top of the smoothed trace, and whether it is a peak at all. */
import type { Course } from './course.ts';

export interface Peak {
  /** sample of the climb at which the highest value is first reached */
  at: number;
  /** K */
  highest: number;
  /** has fallen since by enough, or five minutes went by */
  peaked: boolean;
  /** how far it fell after it, inside the climb, K */
  fallen: number;
  /** time from it to the end of the climb, s */
  after: number;
  /** the climb began at its highest reading: what is seen belongs to what was before */
  atStart: boolean;
  /** next to it the readings are missing for so long that a higher one may have gone unseen */
  hidden: boolean;
}

/** A peak is one when it has fallen by this or twice the recording step, or when so long went by; K and s. */
const FALL = 1;
const AFTER_SECONDS = 300;
/** A fall must also stand out of the noise by so many standard uncertainties. */
const STANDS_OUT = 3;
/** Missing for longer than the one, no further from the highest than the other, hides a peak; s. */
const HIDING_SECONDS = 60;
const NEAR_SECONDS = 30;
/** Highest within so long of the start counts as the start, s. */
const START_SECONDS = 10;

/**
 * The peak of a course.
 * @param course a temperature along a climb, object
 * @param seen a person saw it fall again after the last reading written
 * @returns the peak, or null where nothing was read
 */
export function peakOf(course: Course, seen = false): Peak | null {
  const { T, way } = course;
  let at = -1;
  for (let i = 0; i < T.length; i += 1) {
    const value = T[i] ?? Number.NaN;
    if (!Number.isNaN(value) && (at < 0 || value > (T[at] ?? 0))) at = i;
  }
  const highest = T[at];
  if (highest === undefined) return null;
  const end = way.t[way.t.length - 1] ?? 0;
  const lowest = Math.min(...T.subarray(at).filter((value) => !Number.isNaN(value)));
  const after = end - (way.t[at] ?? end);
  const needed = Math.max(FALL, 2 * course.step, STANDS_OUT * (course.noiseU[at] ?? 0));
  return {
    at,
    highest,
    peaked: seen || highest - lowest >= needed || after >= AFTER_SECONDS,
    fallen: highest - lowest,
    after,
    atStart: (way.t[at] ?? 0) - (way.t[0] ?? 0) < START_SECONDS && way.t.length > 3,
    hidden: !seen && gapsIn(course).some((gap) => gap.to - gap.from > HIDING_SECONDS && near(way.t[at] ?? 0, gap)),
  };
}

const near = (t: number, gap: { from: number; to: number }) =>
  gap.from - t <= NEAR_SECONDS && t - gap.to <= NEAR_SECONDS;

// From the last reading before to the first one after each stretch without any.
function gapsIn({ T, way }: Course): { from: number; to: number }[] {
  const gaps: { from: number; to: number }[] = [];
  let last = way.t[0] ?? 0;
  let open = false;
  for (let i = 0; i < T.length; i += 1) {
    const t = way.t[i] ?? last;
    if (Number.isNaN(T[i] ?? Number.NaN)) open = true;
    else {
      if (open) gaps.push({ from: last, to: t });
      open = false;
      last = t;
    }
  }
  return gaps;
}
