/** Density-altitude bands: the runs of one band brought to its middle height and to points, one a speed. */
import { toSi } from '../../units/index.ts';
import type { BandPoint } from './optimum.ts';
import { bandsOf } from './pairs.ts';
import type { StandardRun } from './run.ts';

export interface Band {
  /** density altitude of the middle, m */
  Hd: number;
  /** indices of the runs */
  runs: number[];
  points: BandPoint[];
  /** indices of the runs behind each point */
  behind: number[][];
  /** change of rate with density altitude used to bring runs to the middle, 1/s, and whether it was measured here */
  lapse: { value: number; measured: boolean };
}

// Share of the sea-level rate lost with each metre of density altitude: 7 % a thousand feet, a rule of thumb from memory.
const LOST = 0.07 / toSi(1000, 'ft');

/**
 * Bands with their points.
 * @param runs standard runs
 * @param partners index of each run's reciprocal partner, or null
 * @returns bands, lowest first
 */
export function bandsWithPoints(runs: readonly StandardRun[], partners: readonly (number | null)[]): Band[] {
  const groups = bandsOf(runs);
  const lapse = lapseBetween(groups.map((group) => group.map((i) => runs[i]).filter((run) => run !== undefined)));
  return groups.map((group) => {
    const inside = group.map((i) => runs[i]).filter((run) => run !== undefined);
    const Hd = inside.reduce((sum, run) => sum + run.Hd / inside.length, 0);
    const used = lapse ?? {
      value: -LOST * Math.max(...inside.map((run) => run.rateStandard)) * (1 + LOST * Hd),
      measured: false,
    };
    const behind = pairUp(group, partners);
    const points = behind.map((members) => {
      const these = members.map((i) => runs[i]).filter((run) => run !== undefined);
      const average = (of: (run: StandardRun) => number) => these.reduce((sum, run) => sum + of(run) / these.length, 0);
      return {
        V: average((run) => run.tas),
        rate: average((run) => run.rateStandard - used.value * (run.Hd - Hd)),
        runs: these.length,
      };
    });
    return { Hd, runs: group, points, behind, lapse: used };
  });
}

function pairUp(group: readonly number[], partners: readonly (number | null)[]): number[][] {
  const out: number[][] = [];
  for (const i of group) {
    const other = partners[i] ?? null;
    if (other !== null && group.includes(other)) {
      if (i < other) out.push([i, other]);
    } else out.push([i]);
  }
  return out;
}

// With two bands or more: best rates of the lowest and the highest band, over the height between.
function lapseBetween(bands: readonly (readonly StandardRun[])[]): { value: number; measured: boolean } | null {
  const ends = [bands[0], bands.at(-1)];
  if (bands.length < 2 || ends.some((band) => !band || band.length < 3)) return null;
  const [low, high] = ends.map((band) => {
    const sorted = [...(band ?? [])].sort((a, b) => b.rateStandard - a.rateStandard).slice(0, 3);
    return {
      rate: sorted.reduce((sum, run) => sum + run.rateStandard / sorted.length, 0),
      Hd: sorted.reduce((sum, run) => sum + run.Hd / sorted.length, 0),
    };
  });
  if (!low || !high) return null;
  return { value: (high.rate - low.rate) / (high.Hd - low.Hd), measured: true };
}
