/** Tables of a weight-and-balance result: the weighing, the load cases, the ballast. SI, the unit in each column. */
import type { MeanChord } from '../../models/index.ts';
import { shareOfChord } from '../../models/index.ts';
import type { Cell, ResultTable } from '../../results/index.ts';
import type { LoadCase, WantedBallast } from './cases.ts';
import type { Empty } from './empty.ts';

const column = (name: string, unit: string) => ({ name, unit });

/**
 * Wheel readings and what each run gave.
 * @param empty the empty airplane with its weighing, object
 * @returns one table of wheels and one of runs; none where nothing was weighed
 */
export function weighingTables(empty: Empty): ResultTable[] {
  if (!empty.weighed) return [];
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
  return [
    {
      name: 'wheels',
      columns: [column('place', 'none'), column('mass', 'kg'), column('arm', 'm'), column('arm-u95', 'm')],
      rows: empty.wheels.map((wheel) => [wheel.place, mean(wheel.readings), wheel.arm, wheel.armU95]),
    },
    {
      name: 'runs',
      columns: [column('run', 'count'), column('mass', 'kg'), column('arm', 'm')],
      rows: empty.weighed.byRun.map((run, i) => [i + 1, run.mass, run.arm]),
    },
  ];
}

/**
 * Load cases with their margins; a margin has its uncertainty taken off already.
 * @param cases load cases, list
 * @param chord mean aerodynamic chord, m, or null
 * @returns the table
 */
export function caseTable(cases: readonly LoadCase[], chord: MeanChord | null): ResultTable {
  return {
    name: 'load-cases',
    columns: [
      column('case', 'none'),
      column('mass', 'kg'),
      column('mass-u95', 'kg'),
      column('arm', 'm'),
      column('arm-u95', 'm'),
      column('chord-share', '1'),
      column('forward-limit', 'm'),
      column('aft-limit', 'm'),
      column('forward-margin', 'm'),
      column('aft-margin', 'm'),
      column('inside', 'none'),
    ],
    rows: cases.map(({ name, balance, margin }): Cell[] => [
      name,
      balance.mass,
      balance.massU95,
      balance.arm,
      balance.armU95,
      chord ? shareOfChord(balance.arm, chord) : null,
      margin?.limits?.forward ?? null,
      margin?.limits?.aft ?? null,
      margin?.forward ?? null,
      margin?.aft ?? null,
      margin === null ? null : margin.inside,
    ]),
  };
}

/**
 * Items of each load case: the way back to what was weighed.
 * @param cases load cases, list
 * @returns the table
 */
export function itemTable(cases: readonly LoadCase[]): ResultTable {
  return {
    name: 'items',
    columns: [
      column('case', 'none'),
      column('item', 'none'),
      column('mass', 'kg'),
      column('arm', 'm'),
      column('moment', 'kg.m'),
    ],
    rows: cases.flatMap(({ name, items }) =>
      items.map((one): Cell[] => [name, one.name, one.mass, one.arm, one.mass * one.arm]),
    ),
  };
}

/**
 * Ballast asked for, rounded up and worked out again.
 * @param wanted answers, list
 * @returns the table
 */
export function ballastTable(wanted: readonly WantedBallast[]): ResultTable {
  return {
    name: 'ballast',
    columns: [
      column('case', 'none'),
      column('station', 'none'),
      column('wanted-arm', 'm'),
      column('ballast', 'kg'),
      column('mass', 'kg'),
      column('arm', 'm'),
      column('arm-u95', 'm'),
      column('inside', 'none'),
      column('reason', 'none'),
    ],
    rows: wanted.map((one): Cell[] => [
      one.name,
      one.station,
      one.wanted,
      one.ballast,
      one.balance?.mass ?? null,
      one.balance?.arm ?? null,
      one.balance?.armU95 ?? null,
      one.margin === null ? null : one.margin.inside,
      one.reason,
    ]),
  };
}
