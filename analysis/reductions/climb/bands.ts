/** Density-altitude bands: the runs of one band brought to its middle height and to points, one a speed. */
import { windGradientEffect } from '../../models/index.ts';
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
  /** what the two runs of each pair say of the scatter of one run */
  pairs: PairScatter;
}

/** Differences within pairs, once the wind's change with height, one for the band, is taken out. */
export interface PairScatter {
  /** sum of squares of one run, m2/s2, and its degrees of freedom */
  rss: number;
  nu: number;
  /** growth of the wind with height along the heading, 1/s; 0 without a pair */
  gradient: number;
  heading: number;
}

/**
 * What the wind's change with height, as the pairs show it, adds to one run of the band. It needs no doubt of its own:
 * it was fitted to the same runs, and takes more of their scatter away than it brings.
 * @param run one of a pair
 * @param pairs of its band
 * @returns the part of its rate, m/s
 * @source kinetic energy against the air, from the energy equation [ftm-108]
 */
export function windPart(run: StandardRun, pairs: PairScatter): number {
  return wayOf(run, pairs.heading) * windGradientEffect(run.rateStandard, run.tas, pairs.gradient);
}

const wayOf = (run: StandardRun, heading: number) => (Math.cos((run.heading ?? 0) - heading) >= 0 ? 1 : -1);

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
    const pairs = pairScatter(
      behind.flatMap((members) => pairOf(members, runs)),
      used.value,
    );
    return { Hd, runs: group, points, behind, lapse: used, pairs };
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

function pairOf(members: readonly number[], runs: readonly StandardRun[]): [StandardRun, StandardRun][] {
  const [a, b] = members.map((i) => runs[i]);
  return a && b ? [[a, b]] : [];
}

// The wind grows with height by one figure in the band: it parts the runs of every pair alike, in proportion to rate and
// speed. What is left of the differences is the scatter of two runs, so half its square that of one.
function pairScatter(pairs: readonly [StandardRun, StandardRun][], lapse: number): PairScatter {
  const heading = pairs[0]?.[0].heading ?? 0;
  const parts = pairs.map(([a, b]) => {
    return {
      difference: wayOf(a, heading) * (a.rateStandard - b.rateStandard - lapse * (a.Hd - b.Hd)),
      shape: windGradientEffect(a.rateStandard, a.tas, 1) + windGradientEffect(b.rateStandard, b.tas, 1),
    };
  });
  const sum = (of: (one: (typeof parts)[number]) => number) => parts.reduce((total, one) => total + of(one), 0);
  const squares = sum(({ shape }) => shape ** 2);
  const gradient = squares > 0 ? sum(({ difference, shape }) => difference * shape) / squares : 0;
  const rss = sum(({ difference, shape }) => (difference - gradient * shape) ** 2 / 2);
  return { rss, nu: Math.max(0, parts.length - 1), gradient, heading };
}
