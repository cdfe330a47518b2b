/** The story of a ground run: runs, points, what they settle at, the hot day, limits, the next run, the soak. */
import { limitEvents, limitsOf } from '../../models/index.ts';
import { flag, OutOfRange, parsedBy, type Refusal, refusal } from '../../remarks/index.ts';
import type { Result, ResultSegment } from '../../results/index.ts';
import { type ReductionInput, refusedResult, resultShell } from '../reduction.ts';
import { airDependence } from './air-dependence.ts';
import { boilingMargin } from './boiling-margin.ts';
import { chartOf } from './chart-traces.ts';
import { comparisonsOf } from './comparisons.ts';
import { configurationEffects, neverMeasured } from './configuration-effects.ts';
import { drawsFrom } from './draws.ts';
import { heatSoak } from './heat-soak.ts';
import { heldModel } from './held-model.ts';
import { hotReference, onHotDay } from './hot-day-margin.ts';
import { type CoolingOptions, coolingOptions, coolingPoints } from './input.ts';
import type { Measured } from './measure.ts';
import { missingLimits } from './missing-limits.ts';
import { longestRunTable, nextRunTable, oneEach } from './next-run.ts';
import { coolingNote } from './note.ts';
import { type Outlook, outlookOf } from './outlook.ts';
import { equilibriumQuantities, marginQuantities } from './quantities.ts';
import { runRemarks } from './remarks.ts';
import { runScatter } from './repeatability.ts';
import { timesOf, unresolvedRemarks } from './rows.ts';
import { measureRun, type Run } from './run.ts';
import { type Answered, authorityTable, hotDayTable, segmentsTable } from './tables.ts';
import { writtenRuns } from './written-run.ts';

/**
 * Reduce an extended ground run.
 * @param input aligned logs or written figures, the airplane, segments and options
 * @returns the result, or a refusal with its reason
 * @throws InputProblem when points, options or segments do not fit their schema
 */
export function reduceCoolingGround(input: ReductionInput): Result {
  const options = parsedBy(coolingOptions, input.options ?? {}, 'bad-request');
  const points = input.points === undefined ? undefined : parsedBy(coolingPoints, input.points, 'bad-points').points;
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
  options: CoolingOptions,
  points: Parameters<typeof writtenRuns>[0] | undefined,
): Run[] | Refusal {
  const recordings = [
    ...(input.recording ? [{ recording: input.recording, edits: input.segments }] : []),
    ...writtenRuns(points ?? []).map(({ recording }) => ({ recording, edits: undefined })),
  ];
  if (recordings.length === 0) return refusal('too-few-points', 'neither a log nor written figures were given');
  const runs: Run[] = [];
  let why: Refusal | null = null;
  for (const { recording, edits } of recordings) {
    const run = measureRun(recording, input.airplane, options, edits);
    if ('code' in run) why = run;
    else runs.push(run);
  }
  return runs.length === 0 && why ? why : runs;
}

function answered(input: ReductionInput, options: CoolingOptions, runs: readonly Run[]): Result {
  const { airplane } = input;
  const first = runs[0];
  if (!first) return refused(input, refusal('no-segments', 'no run could be used'));
  const part = first.trace.main[0]?.part ?? 'coolant';
  const limits = limitsOf(airplane, part);
  const oilLimits = limitsOf(airplane, 'oil');
  const fitted = runs.reduce((sum, run) => sum + [...run.main, ...run.oil].filter((one) => one.fit).length, 0);
  const draws = drawsFrom('cooling-ground', fitted);
  const { reference, flags: placeFlags } = hotReference(airplane, options, first.trace.height);
  const scatter = runScatter(
    runs.flatMap((run) => run.main),
    options,
  );
  const oilScatter = runScatter(
    runs.flatMap((run) => run.oil),
    options,
  );
  const outlooks: Outlook[] = [];
  const answer = (run: Run, measured: Measured, isOil: boolean): Answered => {
    const model = heldModel(measured, airplane, run.trace.file, (isOil ? oilScatter : scatter).repeat);
    const outlook = model && !measured.noCurve ? outlookOf(model, draws) : null;
    if (outlook && !isOil) outlooks.push(outlook);
    const bounds = isOil ? oilLimits : limits;
    return {
      measured,
      file: run.trace.file,
      times: timesOf(run.trace, measured, outlook, bounds),
      hotDay: onHotDay(measured, reference, bounds.limit, (isOil ? oilScatter : scatter).repeat, airplane),
    };
  };
  const main = runs.flatMap((run) => run.main.map((measured) => answer(run, measured, false)));
  const oil = runs.flatMap((run) => run.oil.filter((one) => one.fit).map((measured) => answer(run, measured, true)));
  const events = runs.flatMap((run) => [
    ...run.trace.main.map((hot) => limitEvents(hot, limits)),
    ...(run.trace.oil ? [limitEvents(run.trace.oil, oilLimits)] : []),
  ]);
  const margins = marginQuantities(main, reference, first.governing);
  const hottest = hottestOnHotDay(main);
  const held = oneEach(outlooks);
  const settled = held.filter(({ model }) => model.resolved && model.regimeKnown);
  const all = main.map((one) => one.measured);
  return {
    ...resultShell('cooling-ground', coolingNote, input),
    status: 'reduced',
    quantities: [
      ...margins,
      ...equilibriumQuantities(main, ''),
      ...(part === 'coolant' && hottest?.hotDay
        ? [boilingMargin(hottest.hotDay, hottest.measured.point.label, reference, airplane)]
        : []),
      ...runs.flatMap((run) => heatSoak(run.trace, airplane, limits)),
      ...equilibriumQuantities(oil, 'oil-'),
    ],
    tables: [
      segmentsTable('segments', main),
      ...(oil.length > 0 ? [segmentsTable('segments-oil', oil)] : []),
      hotDayTable('hot-day', main, reference.air),
      hotDayTable('hot-day-oil', oil, reference.air),
      longestRunTable(settled, limits, reference.air, idleTemperature(all)),
      nextRunTable(settled),
      configurationEffects(all, scatter.repeat),
      authorityTable(main, first.governing),
      ...airDependence(all),
    ].filter((table) => table.name.startsWith('segments') || table.rows.length > 0),
    segments: main.map((one) => segmentOf(one)),
    comparisons: [
      ...events.flatMap((event) => event.comparisons),
      ...comparisonsOf(main, limits, reference, scatter.repeat, airplane),
      ...comparisonsOf(oil, oilLimits, reference, oilScatter.repeat, airplane),
    ],
    flags: unique([
      ...events.flatMap((event) => event.flags),
      ...missingLimits(airplane, part),
      ...(oil.length > 0 ? missingLimits(airplane, 'oil') : []),
      ...main.flatMap((one) => [...unresolvedRemarks(one.measured, one.times), ...one.times.flags]),
      ...margins.flatMap((one) =>
        one.flags.filter(({ kind }) => kind === 'regulated' || kind === 'correction-not-credited'),
      ),
      ...runs.flatMap((run) => [...runRemarks(run, airplane), ...run.flags]),
      ...placeFlags,
      ...scatter.flags,
      ...neverMeasured(all, airplane),
      ...(oil.length > 0
        ? [
            flag(
              'regime-unknown',
              'oil: whether its cooler has a thermostat of its own is not known; if it has, a hotter day opens it further than these figures say',
            ),
          ]
        : []),
    ]),
    model: {
      conditions: held.map(({ model }) => model),
      limits: { ...limits, part },
      reference,
      ...chartOf(runs, main),
    },
  };
}

function hottestOnHotDay(answers: readonly Answered[]): Answered | undefined {
  return answers
    .filter((one) => one.hotDay !== null && one.measured.regime === 'fully-open')
    .sort((a, b) => (b.hotDay?.corrected ?? 0) - (a.hotDay?.corrected ?? 0))[0];
}

/** Where the run settled at its lowest speed: the temperature a departure may start from. */
function idleTemperature(measured: readonly Measured[]): number | null {
  const running = measured.filter((one) => one.point.hold.engineSpeed > 0 && one.regime !== 'warming');
  const slowest = running.reduce<Measured | null>(
    (least, one) => (least === null || one.point.hold.engineSpeed < least.point.hold.engineSpeed ? one : least),
    null,
  );
  return slowest ? (slowest.equilibrium ?? slowest.end) : null;
}

function segmentOf({ measured, file }: Answered): ResultSegment {
  const { point, hot } = measured;
  return {
    file,
    fromSeconds: measured.fromSeconds,
    toSeconds: measured.toSeconds,
    role: measured.regime === 'cooling' ? 'soak' : 'hold',
    label: point.label,
    means: {
      'engine-speed': point.hold.engineSpeed,
      'cowl-exit-position': point.hold.exit,
      'cooling-fan-state': point.hold.fan === null ? null : Number(point.hold.fan),
      'outside-air-temperature': measured.outside,
      [hot.quantity]: (measured.start + measured.end) / 2,
    },
  };
}

function unique(flags: Result['flags']): Result['flags'] {
  const seen = new Set<string>();
  return flags.filter((one) => {
    const key = `${one.kind} ${one.message} ${one.fromSeconds ?? ''}`;
    return seen.has(key) ? false : seen.add(key).size > 0;
  });
}

function refused(input: ReductionInput, why: Refusal): Result {
  return refusedResult(resultShell('cooling-ground', coolingNote, input), why);
}
