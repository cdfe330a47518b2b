/** Coverage of ground cooling over simulated days whose truth is known. */
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Cell, Result } from '../../analysis/results/index.ts';
import { BOUNDARY_DAY, HONEST_DAYS, SILENT_DAYS, SLOW_NODE_DAY, type TrialDay } from './cooling-days.ts';
import { type HeldTruth, simulateRun } from './cooling-run.ts';
import { CoverageCount, type CoverageRow } from './coverage-row.ts';

export interface SegmentRow {
  equilibrium: number | null;
  u95: number | null;
  allowance: number | null;
  regime: string | null;
  fromSeconds: number;
  toSeconds: number;
  early: number | null;
  truth: HeldTruth;
  /** share of the row inside one true condition, 0 to 1 */
  within: number;
}

/** Reduce one simulated day; the rows beside their truth. */
export function tryDay({ day, airplane, name }: TrialDay, seed: number): { result: Result; rows: SegmentRow[] } {
  const cooling = reductionOf('cooling-ground');
  if (!cooling) throw new Error('no ground cooling');
  const run = simulateRun(day, `${name} ${seed}`);
  const result = cooling.reduce({ recording: run.recording, airplane });
  return { result, rows: rowsOf(result, run.truth) };
}

function rowsOf(result: Result, truth: readonly HeldTruth[]): SegmentRow[] {
  const table = result.tables.find((one) => one.name === 'segments');
  if (!table) return [];
  const at = (row: readonly Cell[], column: string) =>
    row[table.columns.findIndex((one) => one.name === column)] ?? null;
  const number = (cell: Cell) => (typeof cell === 'number' ? cell : null);
  return table.rows.flatMap((row) => {
    const from = number(at(row, 'from-seconds')) ?? 0;
    const to = number(at(row, 'to-seconds')) ?? 0;
    const inside = (one: HeldTruth) => Math.min(to, one.toSeconds) - Math.max(from, one.fromSeconds);
    const [best] = truth.toSorted((a, b) => inside(b) - inside(a));
    const regime = at(row, 'regime');
    return best
      ? [
          {
            equilibrium: number(at(row, 'equilibrium')),
            u95: number(at(row, 'equilibrium-u95')),
            allowance: number(at(row, 'slow-node-allowance')),
            early: number(at(row, 'time-to-limit-early')),
            regime: typeof regime === 'string' ? regime : null,
            fromSeconds: from,
            toSeconds: to,
            truth: best,
            within: inside(best) / (to - from),
          },
        ]
      : [];
  });
}

/** A piece so long that its equilibrium ought to be given, s. */
export const OUGHT_SECONDS = 720;

export interface DayCoverage {
  row: CoverageRow;
  /** long fully open pieces without an equilibrium, and all of them */
  withheld: number;
  long: number;
  /** fully open rows that reach into another condition */
  astride: number;
}

export function coverageOfDay(trial: TrialDay, count: number): DayCoverage {
  const counted = new CoverageCount(`ground run, T_eq, ${trial.name}`, 'K');
  let [refused, withheld, long, astride] = [0, 0, 0, 0];
  for (let seed = 0; seed < count; seed += 1) {
    const { result, rows } = tryDay(trial, seed);
    if (result.status === 'refused') refused += 1;
    for (const row of rows.filter((one) => one.regime === 'fully-open')) {
      if (row.within < 0.98) astride += 1;
      const isLong = row.toSeconds - row.fromSeconds >= OUGHT_SECONDS;
      if (isLong) long += 1;
      if (row.equilibrium === null || row.u95 === null) withheld += isLong ? 1 : 0;
      else counted.add(row.equilibrium, row.truth.equilibrium, row.u95);
    }
  }
  return { row: counted.row(count, refused, trial.wanted), withheld, long, astride };
}

/** Share of true equilibria at or under the upper end, the slow part included. */
export function upperEndHolds(count: number): { share: number; of: number } {
  let [held, of] = [0, 0];
  for (let seed = 0; seed < count; seed += 1) {
    for (const { equilibrium, u95, allowance, truth } of tryDay(SLOW_NODE_DAY, seed).rows) {
      if (equilibrium === null || u95 === null || allowance === null) continue;
      of += 1;
      if (truth.equilibrium <= equilibrium + u95 + allowance) held += 1;
    }
  }
  return { share: held / Math.max(1, of), of };
}

/** Values given on days that have none to give. */
export function valuesOnSilentDays(count: number): { name: string; values: number; rows: number }[] {
  return SILENT_DAYS.map((trial) => {
    let [values, rows] = [0, 0];
    for (let seed = 0; seed < count; seed += 1) {
      for (const row of tryDay(trial, seed).rows) {
        rows += 1;
        if (row.equilibrium !== null) values += 1;
      }
    }
    return { name: trial.name, values, rows };
  });
}

/** How often a condition that settles exactly at caution is called shown. */
export function falseShown(count: number): { shown: number; of: number } {
  let [shown, of] = [0, 0];
  for (let seed = 0; seed < count; seed += 1) {
    const { result } = tryDay(BOUNDARY_DAY, seed);
    for (const one of result.comparisons) {
      if (!one.what.includes('against caution') || one.value === null) continue;
      of += 1;
      if (one.outcome === 'shown') shown += 1;
    }
  }
  return { shown, of };
}

/** Everything at length, for `npm run bench:coverage`. */
export function coverageCoolingGround(count = 300) {
  return {
    rows: HONEST_DAYS.map((trial) => coverageOfDay(trial, count)),
    slowNodeUpperEnd: upperEndHolds(count),
    silent: valuesOnSilentDays(Math.ceil(count / 3)),
    boundary: falseShown(count),
  };
}
