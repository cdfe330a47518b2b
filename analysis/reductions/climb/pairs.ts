/** Reciprocal runs: the wind that changes with height cancels in the mean of two headings through the same band. */
import { angleBetween } from '../../air/index.ts';
import { toSi } from '../../units/index.ts';
import type { ClimbRun } from './run.ts';

// Runs at one speed and one band: common practice, no source.
const SAME_SPEED = toSi(3, 'kt');
const SAME_HEIGHT = 150;
const RECIPROCAL = toSi(35, 'deg');

/**
 * Partner of each run: same speed and band, opposite heading, each used once, nearest in time first.
 * @param runs all climbs, in order of time
 * @returns index of the partner, or null for a lone run, in the order of the runs
 */
export function partnersOf(runs: readonly ClimbRun[]): (number | null)[] {
  const partner: (number | null)[] = runs.map(() => null);
  runs.forEach((run, i) => {
    if (partner[i] !== null) return;
    const found = runs
      .map((other, j) => ({ other, j }))
      .filter(({ other, j }) => j !== i && partner[j] === null && areReciprocal(run, other))
      .sort(
        (a, b) => Math.abs(a.other.fromSeconds - run.fromSeconds) - Math.abs(b.other.fromSeconds - run.fromSeconds),
      )[0];
    if (!found) return;
    partner[i] = found.j;
    partner[found.j] = i;
  });
  return partner;
}

function areReciprocal(a: ClimbRun, b: ClimbRun): boolean {
  if (a.heading === null || b.heading === null) return false;
  if (Math.abs(a.cas - b.cas) > SAME_SPEED || Math.abs(a.Hp - b.Hp) > SAME_HEIGHT) return false;
  return Math.PI - Math.abs(angleBetween(a.heading, b.heading)) <= RECIPROCAL;
}

/**
 * Density-altitude bands: runs whose mid heights stand together.
 * @param runs all climbs
 * @returns groups of indices, lowest band first
 */
export function bandsOf(runs: readonly { Hd: number }[]): number[][] {
  const order = runs.map((_, i) => i).sort((a, b) => (runs[a]?.Hd ?? 0) - (runs[b]?.Hd ?? 0));
  const bands: number[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const i of order) {
    const Hd = runs[i]?.Hd ?? 0;
    if (Hd - last > 2 * SAME_HEIGHT) bands.push([]);
    bands.at(-1)?.push(i);
    last = Hd;
  }
  return bands;
}
