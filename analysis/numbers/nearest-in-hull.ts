/** The point of a convex hull that is nearest to a given one: how far a condition lies outside what was measured. */
import { Matrix, solve } from 'ml-matrix';
import { OutOfRange } from '../remarks/index.ts';

export interface NearestInHull {
  /** Euclidean distance, unit of the coordinates; 0 inside */
  distance: number;
  point: number[];
  /** share of each vertex in the nearest point, 0 to 1, same order as the vertices */
  shares: number[];
}

/** Relative size of what counts as zero. */
const NOTHING = 1e-12;
const MOST_ROUNDS = 1000;

/**
 * Nearest point of the convex hull of some vertices. The hull may be flat, a line or one point.
 * @param vertices coordinates of each, list of lists of one length, any units
 * @param x coordinates of the point asked about, same units
 * @returns nearest point, its distance and its mixture of the vertices
 * @throws OutOfRange without a vertex
 * @source minimum-norm point of a polytope, Wolfe 1976 [memory]
 */
export function nearestInHull(vertices: readonly (readonly number[])[], x: readonly number[]): NearestInHull {
  if (vertices.length === 0) throw new OutOfRange('vertices of a hull', 0, '1 or more');
  const from = vertices.map((vertex) => x.map((one, k) => (vertex[k] ?? 0) - one));
  const sizes = from.map((one) => product(one, one));
  const scale = Math.max(...sizes, Number.MIN_VALUE);
  let held = [sizes.indexOf(Math.min(...sizes))];
  let shares = [1];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const here = mixture(from, held, shares);
    const towards = from.map((one) => product(here, one));
    const next = towards.indexOf(Math.min(...towards));
    if ((towards[next] ?? 0) > product(here, here) - NOTHING * scale || held.includes(next)) break;
    held.push(next);
    shares.push(0);
    [held, shares] = settled(from, held, shares);
  }
  const point = mixture(from, held, shares).map((one, k) => one + (x[k] ?? 0));
  const apart = Math.sqrt(point.reduce((sum, one, k) => sum + (one - (x[k] ?? 0)) ** 2, 0));
  return {
    distance: apart * apart <= NOTHING * scale ? 0 : apart,
    point,
    shares: vertices.map((_, i) => shares[held.indexOf(i)] ?? 0),
  };
}

// Vertices leave the mixture until the nearest point of the plane through the rest lies between them.
function settled(from: readonly number[][], held: number[], shares: number[]): [number[], number[]] {
  let [kept, now] = [held, shares];
  for (;;) {
    const wanted = affineShares(from, kept);
    if (wanted.every((one) => one > NOTHING)) return [kept, wanted];
    const step = now.reduce((least, one, i) => {
      const to = wanted[i] ?? 0;
      return to <= NOTHING && one > to ? Math.min(least, one / (one - to)) : least;
    }, 1);
    const moved = now.map((one, i) => one + step * ((wanted[i] ?? 0) - one));
    const least = moved.indexOf(Math.min(...moved));
    const stay = (_: number, i: number) => i !== least && (moved[i] ?? 0) > NOTHING;
    kept = kept.filter(stay);
    const left = moved.filter(stay);
    const whole = left.reduce((sum, one) => sum + one, 0);
    now = left.map((one) => one / whole);
    if (kept.length <= 1) return [kept, [1]];
  }
}

// Mixture, negative shares allowed, whose length is least: equations of the multiplier of "shares add up to one".
function affineShares(from: readonly number[][], held: readonly number[]): number[] {
  const rows = held.map((i) => [1, ...held.map((j) => product(from[i] ?? [], from[j] ?? []))]);
  const system = new Matrix([[0, ...held.map(() => 1)], ...rows]);
  const right = Matrix.columnVector([1, ...held.map(() => 0)]);
  return solve(system, right, true).to1DArray().slice(1);
}

function mixture(from: readonly number[][], held: readonly number[], shares: readonly number[]): number[] {
  const size = from[0]?.length ?? 0;
  return Array.from({ length: size }, (_, k) =>
    held.reduce((sum, i, j) => sum + (shares[j] ?? 0) * (from[i]?.[k] ?? 0), 0),
  );
}

function product(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, one, k) => sum + one * (b[k] ?? 0), 0);
}
