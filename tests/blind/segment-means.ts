/**
 * Coverage of the mean of one segment: the rows of the method's own experiments (made in another language), repeated
 * here with the product's rule. Each says what was found there; a limit found is kept as a limit.
 */
import process from 'node:process';
import { coverageFactor, meanWithin, type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { CoverageCount, type CoverageRow, coverageLines } from './coverage-row.ts';

export interface MeanCase {
  what: string;
  seconds: number;
  make: (random: Random, n: number) => Float64Array;
  wanted: readonly [number, number];
}

/** First-order wander of unit variance. */
function wander(random: Random, n: number, tau: number): Float64Array {
  const keep = Math.exp(-1 / tau);
  let x = random.normal();
  return Float64Array.from({ length: n }, () => {
    const now = x;
    x = keep * x + Math.sqrt(1 - keep * keep) * random.normal();
    return now;
  });
}

/** A pilot's oscillation of 25 s, unit amplitude, its phase by chance, and white noise on it. */
function oscillation(random: Random, n: number, white: number): Float64Array {
  const phase = 2 * Math.PI * random.uniform();
  return Float64Array.from({ length: n }, (_, i) => Math.sin(phase + (2 * Math.PI * i) / 25) + white * random.normal());
}

const over = (white: number, tau: number) => (random: Random, n: number) =>
  wander(random, n, tau).map((value) => value + white * random.normal());
const HONEST = [0.9, 1] as const;

export const MEAN_CASES: readonly MeanCase[] = [
  // found: 93, 95, 95 %
  { what: 'correlation time 10 s, 60 s', seconds: 60, make: over(0, 10), wanted: HONEST },
  { what: 'correlation time 10 s, 120 s', seconds: 120, make: over(0, 10), wanted: HONEST },
  { what: 'correlation time 10 s, 240 s', seconds: 240, make: over(0, 10), wanted: HONEST },
  // found: 70, 85, 94 %: what is slower than a fifth of the segment cannot be seen from inside it, a stated limit
  { what: 'correlation time 30 s, 60 s (a limit)', seconds: 60, make: over(0, 30), wanted: [0.6, 0.85] },
  { what: 'correlation time 30 s, 120 s (a limit)', seconds: 120, make: over(0, 30), wanted: [0.78, 0.95] },
  { what: 'correlation time 30 s, 240 s', seconds: 240, make: over(0, 30), wanted: [0.88, 1] },
  // found: 95, 98, 97 %; without noise 98 to 100 %
  { what: 'pilot oscillation and noise, 30 s', seconds: 30, make: (r, n) => oscillation(r, n, 0.5), wanted: HONEST },
  { what: 'pilot oscillation and noise, 60 s', seconds: 60, make: (r, n) => oscillation(r, n, 0.5), wanted: HONEST },
  { what: 'pilot oscillation and noise, 120 s', seconds: 120, make: (r, n) => oscillation(r, n, 0.5), wanted: HONEST },
  { what: 'pilot oscillation alone, 60 s', seconds: 60, make: (r, n) => oscillation(r, n, 0), wanted: HONEST },
  // found: 98 to 100 %, where the first autocorrelation alone is blind to the wander and covers 63 %
  { what: 'white noise over 20 s wander, 60 s', seconds: 60, make: over(2, 20), wanted: [0.94, 1] },
];

/** Least credible correlation time of the thermal rows, s. */
const FLOOR = 10;

/**
 * Coverage of each case.
 * @param segments how many of each
 * @param cases which
 */
export function coverageSegmentMeans(segments: number, cases: readonly MeanCase[] = MEAN_CASES): CoverageRow[] {
  const rows = cases.map(({ what, seconds, make, wanted }) => {
    const counted = new CoverageCount(`mean of a segment, ${what}`, '1');
    for (let k = 0; k < segments; k += 1) {
      const { mean, u, nu } = meanWithin(make(seededRandom(`${what} ${k}`), seconds), 1, FLOOR);
      counted.add(mean, 0, coverageFactor(nu) * u);
    }
    return counted.row(segments, 0, wanted);
  });
  process.stdout.write(`${coverageLines(rows).join('\n')}\n`);
  return rows;
}
