/** The tables of a climb result: one row a climb, one row a slab of a long climb, the curves. */
import type { Cell, ResultTable } from '../../results/index.ts';
import type { BandResult } from './optima.ts';
import { curveHalfWidth, curveRate } from './rate-curve.ts';
import type { StandardRun } from './run.ts';

/** One climb as it stands in the table: the run, its U95s, and its place among the others. */
export interface ClimbRow {
  run: StandardRun;
  /** U95 of the observed rate: this run's own noise, ends and sensors */
  u95: number;
  /** U95 of the standard rate, scatter between runs included */
  u95Standard: number;
  /** place of its band, from 0; null where it takes no part in a curve */
  band: number | null;
  partner: number | null;
  residual: number | null;
}

const columns = (pairs: readonly (readonly [string, string])[]) => pairs.map(([name, unit]) => ({ name, unit }));

/**
 * One row a climb.
 * @param rows climbs in order of time
 * @returns table `climbs`
 */
export function climbsTable(rows: readonly ClimbRow[]): ResultTable {
  return {
    name: 'climbs',
    columns: columns([
      ['label', 'none'],
      ['calibrated-airspeed', 'm/s'],
      ['density-altitude', 'm'],
      ['rate-observed', 'm/s'],
      ['u95', 'm/s'],
      ['rate-standard', 'm/s'],
      ['rate-standard-u95', 'm/s'],
      ['excess-power', 'm/s'],
      ['residual', 'm/s'],
      ['indicated-airspeed', 'm/s'],
      ['true-airspeed', 'm/s'],
      ['pressure-altitude', 'm'],
      ['air', 'K'],
      ['mass', 'kg'],
      ['heading', 'rad'],
      ['engine-speed', '1/s'],
      ['manifold-pressure', 'Pa'],
      ['band', 'count'],
      ['partner', 'count'],
      ['file', 'none'],
      ['from-seconds', 's'],
      ['to-seconds', 's'],
    ]),
    rows: rows.map(({ run, u95, u95Standard, band, partner, residual }): Cell[] => [
      run.label,
      run.cas,
      run.Hd,
      run.rate,
      u95,
      run.rateStandard,
      u95Standard,
      run.Ps,
      residual,
      run.ias,
      run.tas,
      run.Hp,
      run.T,
      run.mass,
      run.heading,
      run.engineSpeed,
      run.manifoldPressure,
      band === null ? null : band + 1,
      partner === null ? null : partner + 1,
      run.file,
      run.fromSeconds,
      run.toSeconds,
    ]),
  };
}

/**
 * One row a slab of a long climb.
 * @param slabs standard runs, lowest first
 * @param u95 of each standard rate, m/s
 * @returns table `check-climb`
 */
export function checkClimbTable(slabs: readonly StandardRun[], u95: readonly number[]): ResultTable {
  return {
    name: 'check-climb',
    columns: columns([
      ['label', 'none'],
      ['density-altitude', 'm'],
      ['pressure-altitude', 'm'],
      ['calibrated-airspeed', 'm/s'],
      ['rate-observed', 'm/s'],
      ['rate-standard', 'm/s'],
      ['u95', 'm/s'],
      ['from-seconds', 's'],
      ['to-seconds', 's'],
    ]),
    rows: slabs.map((run, i): Cell[] => [
      run.label,
      run.Hd,
      run.Hp,
      run.cas,
      run.rate,
      run.rateStandard,
      u95[i] ?? null,
      run.fromSeconds,
      run.toSeconds,
    ]),
  };
}

/**
 * The fitted curves at round speeds inside the flown range, for the chart and the handbook.
 * @param solved bands with their curves
 * @param toCas calibrated airspeed of a true one at a density altitude, function
 * @returns table `climb-curve`: mean and, for the next climb, prediction half-widths
 */
export function curveTable(solved: readonly BandResult[], toCas: (V: number, Hd: number) => number): ResultTable {
  const rows: Cell[][] = [];
  solved.forEach(({ band, optimum }, i) => {
    if (!optimum) return;
    const speeds = band.points.map((point) => point.V);
    const [first, last] = [Math.min(...speeds), Math.max(...speeds)];
    const steps = 12;
    for (let k = 0; k <= steps; k += 1) {
      const V = first + ((last - first) * k) / steps;
      rows.push([
        i + 1,
        band.Hd,
        toCas(V, band.Hd),
        V,
        curveRate(optimum.curve.form, optimum.curve.parameters, V),
        curveHalfWidth(optimum, V, false),
        curveHalfWidth(optimum, V, true),
      ]);
    }
  });
  return {
    name: 'climb-curve',
    columns: columns([
      ['band', 'count'],
      ['density-altitude', 'm'],
      ['calibrated-airspeed', 'm/s'],
      ['true-airspeed', 'm/s'],
      ['rate', 'm/s'],
      ['u95', 'm/s'],
      ['u95-next-climb', 'm/s'],
    ]),
    rows,
  };
}
