/** The story of a cooling climb: climbs, what each temperature did in them, the hot day, limits, what comes next. */
import type { Airplane } from '../../airplane/index.ts';
import { type HotDayLaw, hotDayLaw } from '../../models/index.ts';
import { type Flag, flag, OutOfRange, parsedBy, type Refusal, refusal } from '../../remarks/index.ts';
import type { Result, ResultSegment } from '../../results/index.ts';
import { type ReductionInput, refusedResult, resultShell } from '../reduction.ts';
import { type Answer, answerOf } from './answer.ts';
import { boilingMargin } from './boiling.ts';
import { chartOf } from './chart-traces.ts';
import { peakModel } from './climb-model.ts';
import { comparisonsOf } from './comparisons.ts';
import type { Reference } from './corrected.ts';
import { type CoolingClimbOptions, coolingClimbOptions, coolingClimbPoints } from './input.ts';
import { missingLimits } from './missing-limits.ts';
import { coolingClimbNote } from './note.ts';
import { quantitiesOf } from './quantities.ts';
import { climbScatter } from './repeatability.ts';
import { measureRun, type Run } from './run.ts';
import { sensorRemarks } from './sensor-remarks.ts';
import { aheadTable, authorityTable, peaksTable } from './tables.ts';
import { writtenRuns } from './written.ts';

/**
 * Reduce a cooling climb.
 * @param input aligned logs or written figures, the airplane, segments and options
 * @returns the result, or a refusal with its reason
 * @throws InputProblem when points, options or segments do not fit their schema
 */
export function reduceCoolingClimb(input: ReductionInput): Result {
  const options = parsedBy(coolingClimbOptions, input.options ?? {}, 'bad-request');
  const points = input.points === undefined ? [] : parsedBy(coolingClimbPoints, input.points, 'bad-points').points;
  try {
    const runs = runsOf(input, options, points);
    return 'code' in runs ? refused(input, runs) : answered(input, options, runs);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(input, refusal('out-of-domain', `${error.message}; a unit or a channel may be wrong`));
  }
}

function runsOf(
  input: ReductionInput,
  options: CoolingClimbOptions,
  points: Parameters<typeof writtenRuns>[0],
): Run[] | Refusal {
  const runs: Run[] = [];
  if (input.recording) {
    const run = measureRun(input.recording, input.airplane, options, input.segments);
    if ('code' in run) return run;
    runs.push(run);
  }
  const written = writtenRuns(points, input.airplane, options);
  if ('code' in written) return written;
  runs.push(...written);
  return runs.length > 0 ? runs : refusal('too-few-points', 'neither a log nor written figures were given');
}

function answered(input: ReductionInput, options: CoolingClimbOptions, runs: readonly Run[]): Result {
  const { airplane } = input;
  const { law, flags: lawFlags } = referenceDay(airplane, options);
  const found = runs.flatMap((run) => run.found);
  if (found.length === 0) {
    return refused(
      input,
      refusal('no-segments', 'no temperature was read through half of a climb; look at the channels'),
      runs.flatMap((run) => run.flags),
    );
  }
  const { repeat, flags: repeatFlags } = climbScatter(found, law, options);
  const answers = found.map((one) => answerOf(one, airplane, law, repeat(one.course.quantity)));
  const reference = (one: Answer): Reference => ({
    law,
    airplane,
    air: one.air,
    repeat: repeat(one.course.quantity),
    lag: one.lag,
    start: one.start,
    powerFalls: one.powerFalls,
  });
  const boiling = answers.flatMap((one) => boilingMargin(one, airplane, reference(one)) ?? []);
  const [margins, peaks] = [quantitiesOf(answers, law.words), boiling];
  const marginCount = 2 * answers.length;
  return {
    ...resultShell('cooling-climb', coolingClimbNote, input),
    status: 'reduced',
    quantities: [...margins.slice(0, marginCount), ...peaks, ...margins.slice(marginCount)],
    tables: [peaksTable(answers), authorityTable(answers), aheadTable(answers)].filter(
      (table) => table.name === 'peaks' || table.rows.length > 0,
    ),
    segments: runs.flatMap(segmentsOf),
    comparisons: [...runs.flatMap((run) => run.comparisons), ...comparisonsOf(answers, airplane, reference)],
    flags: unique([
      ...answers.flatMap((one) => one.flags),
      ...runs.flatMap((run) => run.flags),
      ...missingLimits(answers, airplane),
      ...sensorRemarks(answers, airplane),
      ...lawFlags,
      ...repeatFlags,
    ]),
    model: {
      peaks: answers.flatMap((one) => peakModel(one, reference(one)) ?? []),
      reference: law.words,
      traces: chartOf(answers, law),
    },
  };
}

function referenceDay(airplane: Airplane | undefined, options: CoolingClimbOptions): { law: HotDayLaw; flags: Flag[] } {
  const standard = options.hotDay ?? airplane?.plan.hotDay ?? '14cfr23';
  const air = options.hotDayAir ?? airplane?.plan.hotDayAir;
  if (!air) return { law: hotDayLaw(standard), flags: [] };
  const height = options.hotDayHeight?.si ?? airplane?.place.elevation.si;
  const flags =
    height === undefined
      ? [
          flag(
            'assumed-value',
            'the height the hotter day is meant for is not known: sea level taken. State it, or enter the place on the Airplane page',
          ),
        ]
      : [];
  return { law: hotDayLaw(standard, { air: air.si, height: height ?? 0 }), flags };
}

function segmentsOf({ trace, climbs }: Run): ResultSegment[] {
  if (!trace) return [];
  return climbs.map(({ climb, settings }) => ({
    file: trace.file,
    fromSeconds: trace.grid.start + climb.from * trace.grid.dt,
    toSeconds: trace.grid.start + climb.to * trace.grid.dt,
    role: 'climb',
    label: climb.label,
    means: { ...settings },
  }));
}

function unique(flags: readonly Flag[]): Result['flags'] {
  const seen = new Set<string>();
  return flags.filter((one) => {
    const key = `${one.kind} ${one.message} ${one.fromSeconds ?? ''}`;
    return seen.has(key) ? false : seen.add(key).size > 0;
  });
}

function refused(input: ReductionInput, why: Refusal, flags: Flag[] = []): Result {
  return refusedResult(resultShell('cooling-climb', coolingClimbNote, input), why, flags);
}
