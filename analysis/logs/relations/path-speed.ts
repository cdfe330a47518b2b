/** Ground speed against the way the positions go: it tells the unit of the speed, and true track from magnetic. */

import { median } from '../../numbers/index.ts';
import { differenceToSi } from '../../units/index.ts';
import { type ScaledColumn, type ScaleEvidence, someRows } from './scale-evidence.ts';

/** Mean radius of the earth, m (from memory); good to half a percent, and the tolerance is ten times that. */
const EARTH_RADIUS = 6.371e6;
const LONGEST_STEP_SECONDS = 20;
const SHORTEST_STEP_METRES = 40;
const TOLERANCE = 0.06;

interface PathStep {
  from: number;
  to: number;
  seconds: number;
  metres: number;
  /** direction of movement from true north, rad */
  course: number;
}

/**
 * The steps between positions far enough apart to be measured.
 * @param latitude degrees, as written
 * @param longitude degrees, as written
 * @param t seconds of the rows, s
 * @returns steps, rising
 */
export function pathSteps(latitude: Float64Array, longitude: Float64Array, t: Float64Array): PathStep[] {
  const degree = differenceToSi(1, 'deg');
  const steps: PathStep[] = [];
  let from = -1;
  for (const row of someRows(t.length)) {
    const lat = latitude[row] ?? Number.NaN;
    const lon = longitude[row] ?? Number.NaN;
    if (Number.isNaN(lat) || Number.isNaN(lon) || (lat === 0 && lon === 0)) continue;
    if (from < 0) {
      from = row;
      continue;
    }
    const seconds = (t[row] ?? 0) - (t[from] ?? 0);
    if (seconds > LONGEST_STEP_SECONDS) {
      from = row;
      continue;
    }
    const north = EARTH_RADIUS * degree * (lat - (latitude[from] ?? 0));
    const east = EARTH_RADIUS * degree * (lon - (longitude[from] ?? 0)) * Math.cos(degree * lat);
    const metres = Math.hypot(north, east);
    if (metres < SHORTEST_STEP_METRES) continue;
    if (seconds > 0 && metres / seconds < 300)
      steps.push({ from, to: row, seconds, metres, course: Math.atan2(east, north) });
    from = row;
  }
  return steps;
}

/**
 * What the positions say about a speed over the ground.
 * @param steps from pathSteps
 * @param speed the column, values as written
 * @returns evidence, or null where the airplane hardly moved
 */
export function speedFromPath(steps: readonly PathStep[], speed: ScaledColumn): ScaleEvidence | null {
  const ratios = steps.flatMap(({ from, to, seconds, metres }) => {
    const written = 0.5 * ((speed.numbers[from] ?? Number.NaN) + (speed.numbers[to] ?? Number.NaN));
    return written > 0 ? [metres / seconds / written] : [];
  });
  if (ratios.length < 20) return null;
  return {
    place: speed.place,
    factor: median(ratios),
    tolerance: TOLERANCE,
    by: 'the way between the recorded positions',
  };
}

/**
 * How far a recorded track turns away from the way the positions go: near zero when it is from true north.
 * @param steps from pathSteps
 * @param track degrees as written
 * @returns the median difference and its scatter, deg, or null where there are too few steps
 */
export function trackOffset(
  steps: readonly PathStep[],
  track: Float64Array,
): { degrees: number; scatter: number } | null {
  const degree = differenceToSi(1, 'deg');
  const differences = steps.flatMap(({ from, to, course }) => {
    const [before, after] = [track[from] ?? Number.NaN, track[to] ?? Number.NaN];
    // In a turn the two ends differ, and neither is the way between them.
    if (!(Math.abs(wrap(after - before)) < 5)) return [];
    return [wrap(before + 0.5 * wrap(after - before) - course / degree)];
  });
  if (differences.length < 20) return null;
  const centre = median(differences);
  return { degrees: centre, scatter: median(differences.map((one) => Math.abs(wrap(one - centre)))) };
}

const wrap = (degrees: number) => degrees - 360 * Math.round(degrees / 360);
