/** The answer of a climb reduction in the shape every result has. */

import { casAtDensityAltitude } from '../../models/index.ts';
import type { Flag } from '../../remarks/index.ts';
import type { Condition, Result, ResultTable } from '../../results/index.ts';
import { meansOf } from '../../segments/index.ts';
import { type ReductionInput, resultShell } from '../reduction.ts';
import { ceilingQuantities } from './ceiling-quantities.ts';
import { climbModel } from './climb-model.ts';
import { climbNote } from './note.ts';
import { type AirspeedDoubt, bandQuantities } from './optima.ts';
import type { Compared } from './rows.ts';
import { checkClimbTable, climbsTable, curveTable } from './tables.ts';

export interface ClimbAnswer {
  input: ReductionInput;
  compared: Compared;
  doubt: AirspeedDoubt;
  /** mass the rates stand for, kg, or null */
  mass: number | null;
  /** true where they stand for the mass at the first record, which nobody stated */
  atFirstRecord: boolean;
  flags: Flag[];
}

const MEANS = [
  'indicated-airspeed',
  'pressure-altitude',
  'outside-air-temperature',
  'heading-magnetic',
  'engine-speed',
  'manifold-pressure',
  'fuel-flow',
];

/**
 * The result of an answer.
 * @param answer rows, bands, doubts and remarks
 * @returns the result
 * @throws OutOfRange outside the relations of air data
 */
export function buildResult(answer: ClimbAnswer): Result {
  const { input, compared, doubt, mass, flags } = answer;
  const { rows, solved, slabs } = compared;
  const conditions: Record<string, Condition> =
    mass === null
      ? { mass: answer.atFirstRecord ? 'as at the first record, not stated' : 'as flown' }
      : { mass: { value: mass, unit: 'kg' } };
  const own = rows.flatMap(({ run }) => run.flags);
  return {
    ...resultShell('climb', climbNote, input),
    status: 'reduced',
    quantities: [
      ...worthSaying(solved).flatMap((one) => bandQuantities(one, doubt, conditions)),
      ...ceilingQuantities(
        solved,
        slabs.map(({ run }) => run),
        conditions,
      ),
    ],
    tables: [
      climbsTable(rows),
      ...(slabs.length > 0
        ? [
            checkClimbTable(
              slabs.map(({ run }) => run),
              slabs.map(({ u95 }) => u95),
            ),
          ]
        : []),
      curveTable(solved, casAtDensityAltitude),
      nearBestTable(compared),
    ],
    segments: rows.map(({ run }) => ({
      file: run.file,
      fromSeconds: run.fromSeconds,
      toSeconds: run.toSeconds,
      role: 'climb',
      label: run.label,
      means: input.recording ? meansOf(input.recording, run, MEANS) : { 'indicated-airspeed': run.ias },
    })),
    comparisons: [],
    flags: [...flags, ...own],
    model: { climb: climbModel(compared, mass) },
  };
}

// A lone climb on the way from one band to the next has its row; three times "not resolved" for it helps nobody.
function worthSaying(solved: Compared['solved']): Compared['solved'] {
  const several = solved.filter(({ band }) => band.points.length > 1);
  return several.length > 0 ? several : solved;
}

// What a pilot can use when the speed of the best rate itself is not sharp.
function nearBestTable({ solved }: Compared): ResultTable {
  return {
    name: 'near-best-rate',
    columns: [
      { name: 'band', unit: 'count' },
      { name: 'density-altitude', unit: 'm' },
      { name: 'from-calibrated-airspeed', unit: 'm/s' },
      { name: 'to-calibrated-airspeed', unit: 'm/s' },
    ],
    rows: solved.flatMap(({ band, optimum }, i) =>
      optimum?.withinTwoPercent
        ? [[i + 1, band.Hd, ...optimum.withinTwoPercent.map((V) => casAtDensityAltitude(V, band.Hd))]]
        : [],
    ),
  };
}
