/**
 * Algebraic circle: |Vg|^2 = 2 Vg.W + (TAS^2 - W^2), linear in the wind. Exact for three legs at one speed; for more it
 * is where the search starts.
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { OutOfRange } from '../../remarks/index.ts';

export interface CircleLeg {
  /** velocity over the ground, m/s */
  north: number;
  east: number;
}

export interface Circle {
  tas: number;
  /** where the air moves to, m/s */
  wind: { north: number; east: number };
}

/**
 * True airspeed and wind of legs at one speed.
 * @param legs velocities over the ground, three or more, m/s
 * @returns true airspeed and wind, m/s
 * @throws OutOfRange with fewer than three legs, or legs that do not span the wind
 * @source Gray 1998 for three legs; the algebraic least-squares circle for more [gray-1998]
 */
export function circleThrough(legs: readonly CircleLeg[]): Circle {
  if (legs.length < 3) throw new OutOfRange('legs', legs.length, '3 or more');
  const rows = legs.map((v) => [2 * v.north, 2 * v.east, 1]);
  const solved = solve(
    rows,
    legs.map((v) => v.north ** 2 + v.east ** 2),
  );
  if (!solved) throw new OutOfRange('spread of directions', 0, 'three directions that stand apart');
  const [north = 0, east = 0, rest = 0] = solved;
  return { tas: Math.sqrt(Math.max(0, rest + north ** 2 + east ** 2)), wind: { north, east } };
}

/**
 * A wind to start the search from: legs of all speeds, each speed's square known but for a common share.
 * @param legs velocity over the ground and trial true airspeed of each, m/s; 0 where not known
 * @returns where the air moves to, m/s; zero where the legs do not tell
 */
export function startingWind(legs: readonly (CircleLeg & { along: boolean; tas: number })[]): {
  north: number;
  east: number;
} {
  const whole = legs.filter((leg) => !leg.along);
  const rows = whole.map((v) => [2 * v.north, 2 * v.east, 1]);
  const solved = solve(
    rows,
    whole.map((v) => v.north ** 2 + v.east ** 2 - v.tas ** 2),
  );
  return { north: solved?.[0] ?? 0, east: solved?.[1] ?? 0 };
}

const RANK = 1e-6;

function solve(rows: readonly number[][], right: readonly number[]): number[] | null {
  if (rows.length < 3) return null;
  // Columns of one size, so that the rank says something about directions.
  const size = Math.max(...rows.flatMap((row) => row.slice(0, 2).map(Math.abs)), 1e-9);
  const svd = new SingularValueDecomposition(new Matrix(rows.map(([a = 0, b = 0, c = 0]) => [a / size, b / size, c])), {
    autoTranspose: true,
  });
  const values = svd.diagonal;
  if (!(Math.min(...values) > RANK * Math.max(...values))) return null;
  const x = svd.solve(Matrix.columnVector([...right])).to1DArray();
  return [(x[0] ?? 0) / size, (x[1] ?? 0) / size, x[2] ?? 0];
}
