/** Which one more leg would help most: each candidate joins the fit on paper, and the largest U95 is worked out anew. */
import { components, directionOf } from '../../air/index.ts';
import { coverageFactor } from '../../numbers/index.ts';
import { type Doubt, groupWeights, legScatterOf } from './doubt.ts';
import { windFromUnknowns } from './fit.ts';
import { middleOf } from './leg.ts';
import type { SpeedRow } from './rows.ts';
import { basisAt } from './wind-model.ts';

export interface NextLeg {
  flaps: string;
  ias: number;
  /** track to fly, rad, and the direction of the nose it needs */
  track: number;
  heading: number;
  /** largest U95 of any speed now and with this leg flown, m/s */
  now: number;
  then: number;
}

const DIRECTIONS = 24;
/** The leg would be flown this long after the last one, s. */
const LATER = 180;

/**
 * Candidates, best first.
 * @param doubt answer and what its uncertainty is made of
 * @param rows the speeds
 * @returns one a speed and direction, those that cut the largest U95 most first
 * @source rank-one change of (J'J)^-1: Sherman and Morrison [memory]
 */
export function nextLegs(doubt: Doubt, rows: readonly SpeedRow[]): NextLeg[] {
  const { plan, solution, legs } = doubt;
  const { wind } = plan;
  if (wind.axes.length < 2) return [];
  const { inverse, rss, nu } = solution.fit;
  const now = Math.max(...rows.map((row) => row.error.u95));
  const epoch = wind.epochs - 1;
  const seconds = Math.max(...legs.map(middleOf)) + LATER;
  const basis = basisAt(wind, epoch, seconds, wind.height);
  const windThen = windFromUnknowns(wind, solution.fit.wind, basis);
  // One more leg is expected to scatter as the others do.
  const expected = legScatterOf(
    nu > 0 ? (rss * (nu + 1)) / nu : doubt.scatter.s ** 2,
    (nu + 1) / doubt.inflation,
    doubt.legScatter,
  );
  const k = coverageFactor(expected.nu);
  const candidates = plan.groups.flatMap((group, g) =>
    Array.from({ length: DIRECTIONS }, (_, d) => {
      const heading = (2 * Math.PI * d) / DIRECTIONS;
      const nose = components(1, heading);
      const slope = solution.slopes[g] ?? 1;
      const row = [
        ...wind.axes.flatMap((axis) => basis.map((term) => -(nose.north * axis.north + nose.east * axis.east) * term)),
        ...(solution.gradients[g] ?? []).map((change) => -slope * change),
      ];
      const then = Math.max(
        ...rows.map((one, j) => {
          const random = k * expected.s * Math.sqrt(Math.max(0, joined(inverse, row, groupWeights(doubt, j))));
          const others = one.error.u95 ** 2 - (one.error.parts.repeatability ?? 0) ** 2 - noiseOf(one) ** 2;
          return Math.hypot(random, Math.sqrt(Math.max(0, others)));
        }),
      );
      const tas = rows[g]?.tas ?? 0;
      const over = { north: tas * nose.north + windThen.north, east: tas * nose.east + windThen.east };
      return { flaps: group.flaps, ias: group.ias, track: directionOf(over), heading, now, then };
    }),
  );
  return candidates.sort((a, b) => a.then - b.then);
}

function noiseOf(row: SpeedRow): number {
  return row.error.parts.noise ?? 0;
}

// Variance of weights'x once a row has joined the fit.
function joined(inverse: readonly (readonly number[])[], row: readonly number[], weights: readonly number[]): number {
  const product = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, x, i) => sum + x * b.reduce((inner, y, j) => inner + (inverse[i]?.[j] ?? 0) * y, 0), 0);
  return product(weights, weights) - product(weights, row) ** 2 / (1 + product(row, row));
}
