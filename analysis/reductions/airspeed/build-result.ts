/** The answer in the shape every result has. */
import { altitudeCorrection, impactPressure } from '../../air/index.ts';
import type { Flag } from '../../remarks/index.ts';
import { type Comparison, compareWithLimit, type Result, type ResultSegment } from '../../results/index.ts';
import { meansOf } from '../../segments/index.ts';
import { fromSi, toSi } from '../../units/index.ts';
import { type ReductionInput, resultShell } from '../reduction.ts';
import type { AirChain } from './air-chain.ts';
import type { Doubt } from './doubt.ts';
import { calibrationOf, curveRanks } from './fitted-curve.ts';
import { nextLegs } from './next-point.ts';
import { airspeedNote } from './note.ts';
import type { Gathered } from './points.ts';
import { fitQuantities, speedQuantities, windQuantities } from './quantities.ts';
import { DILUTION_REFUSE, type SpeedRow } from './rows.ts';
import {
  curveRankTable,
  curveTable,
  legsTable,
  nextLegTable,
  positionErrorTable,
  uncertaintyTable,
  windTable,
} from './tables.ts';

export interface Answer {
  input: ReductionInput;
  chain: AirChain;
  doubt: Doubt;
  rows: readonly SpeedRow[];
  gathered: Gathered;
  flags: Flag[];
}

const MEANS = ['indicated-airspeed', 'pressure-altitude', 'outside-air-temperature', 'ground-speed', 'track-true'];

/**
 * The result of an answer.
 * @param answer rows, doubt, legs and remarks
 * @returns the result
 * @throws OutOfRange outside the relations of air data
 */
export function buildResult(answer: Answer): Result {
  const { input, chain, doubt, rows, flags } = answer;
  const unit = input.airplane?.instruments.units.airspeed ?? 'kt';
  const calibration = calibrationOf(doubt, chain.commonStatic);
  const speedOnly = calibration === null;
  return {
    ...resultShell('airspeed', airspeedNote, input),
    status: 'reduced',
    quantities: [
      ...rows.flatMap((row) => speedQuantities(row, speedOnly)),
      ...windQuantities(doubt),
      ...fitQuantities(doubt),
    ],
    tables: [
      ...(speedOnly ? [] : [positionErrorTable(rows), curveTable(calibration, rows, unit)]),
      legsTable(doubt),
      ...(speedOnly ? [] : [uncertaintyTable(rows)]),
      windTable(doubt),
      nextLegTable(nextLegs(doubt, rows)),
      ...(speedOnly ? [] : [curveRankTable(curveRanks(doubt, chain))]),
    ],
    segments: segmentsOf(answer),
    comparisons: speedOnly ? [] : rows.flatMap((row) => [airspeedRule(row, unit), altimeterRule(row, unit)]),
    flags,
    ...(calibration ? { model: { calibration } } : {}),
  };
}

function segmentsOf({ input, gathered, doubt }: Answer): ResultSegment[] {
  const { recording } = input;
  if (!recording) return [];
  const file = recording.tables[0]?.file ?? '';
  return gathered.segments.map((segment) => {
    const flaps = doubt.legs.find(
      (leg) => leg.fromSeconds >= segment.fromSeconds && leg.toSeconds <= segment.toSeconds,
    )?.flaps;
    return {
      file,
      fromSeconds: segment.fromSeconds,
      toSeconds: segment.toSeconds,
      role: segment.role,
      label: segment.label ?? flaps ?? '',
      means: meansOf(recording, segment, MEANS),
    };
  });
}

/** The larger of 3 % and 5 kt. */
function airspeedRule(row: SpeedRow, unit: string): Comparison {
  const lost = row.dilution > DILUTION_REFUSE;
  return compareWithLimit({
    what: `position error at ${nameOf(row, unit)}, beside 14 CFR 23.1323(b): 3 % or 5 kt`,
    value: lost ? null : Math.abs(row.correction),
    u95: lost ? null : row.error.u95,
    limit: Math.max(0.03 * row.cas, toSi(5, 'kt')),
    unit: 'm/s',
    reference: true,
  });
}

/** 30 ft per 100 kt at sea level on the standard day; 30 ft below 100 kt. */
function altimeterRule(row: SpeedRow, unit: string): Comparison {
  const lost = row.dilution > DILUTION_REFUSE;
  const atSeaLevel = (dps: number) => Math.abs(altitudeCorrection(dps, 0));
  return compareWithLimit({
    what: `altimeter error of the same static source at ${nameOf(row, unit)}, beside 14 CFR 23.1325(e): 30 ft per 100 kt`,
    value: lost ? null : atSeaLevel(row.staticError),
    u95: lost ? null : atSeaLevel(impactPressure(row.cas + row.error.u95) - impactPressure(row.cas)),
    limit: toSi(30, 'ft') * Math.max(1, row.cas / toSi(100, 'kt')),
    unit: 'm',
    reference: true,
  });
}

function nameOf(row: SpeedRow, unit: string): string {
  return `${fromSi(row.ias, unit).toFixed(0)} ${unit} indicated, flaps ${row.flaps}${row.turning ? ', in turns' : ''}`;
}
