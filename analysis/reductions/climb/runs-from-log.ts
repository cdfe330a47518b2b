/** Climbs of a log: segments found or set by hand, measured one by one; what had to be left out, with the reason. */
import type { Airplane } from '../../airplane/index.ts';
import type { Recording } from '../../logs/index.ts';
import { seriesOf } from '../../logs/index.ts';
import { smooth } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import {
  CLIMB_CRITERIA,
  type Excluded,
  findClimbs,
  meanBetween,
  meansOf,
  placeSegments,
  type Segment,
  type SegmentEdit,
} from '../../segments/index.ts';
import { fromSi, toSi } from '../../units/index.ts';
import type { AirReader } from './air-data.ts';
import { type ClimbChannels, headingBetween, longestGap, samplesBetween } from './channels.ts';
import { between, slabsOf } from './check-climb.ts';
import type { MassFlown } from './mass-flown.ts';
import { type ClimbSamples, measureRun, type RunFacts } from './measure-run.ts';
import type { ClimbRun } from './run.ts';
import { settledSpan } from './settled-span.ts';

/** A measured climb with the doubt of its airspeed and, for a long one, its slabs. */
export interface MeasuredRun {
  run: ClimbRun;
  uCas: number;
  inCurve: boolean;
  slabs: ClimbRun[];
}

export interface RunsFound {
  runs: MeasuredRun[];
  excluded: Excluded[];
  /** in words, for the result page */
  criteria: string[];
}

export interface LogContext {
  recording: Recording;
  channels: ClimbChannels;
  airplane: Airplane | undefined;
  reader: AirReader;
  mass: MassFlown;
  edits: readonly SegmentEdit[] | undefined;
}

/** Shorter and lower climbs are no climbs to measure: common practice, no source. */
const CRITERIA = { ...CLIMB_CRITERIA, dwell: 45, gain: 150 };
/** What a rate worth publishing needs: either, common practice, no source. */
const RULE = { seconds: 120, gain: 300 };
/** A silence of the recorder longer than this breaks a run, s; the finder looks past it so that it is seen and said. */
const LONGEST_GAP = 5;
const LOOK_PAST = 20;
const MOST_SPEED_CHANGE = toSi(10, 'kt');
/** From here on a change of airspeed is reduced, with its energy, and flagged. */
const FLAGGED_SPEED_CHANGE = toSi(5, 'kt');
const SMOOTHING = 10;
/** Change of engine speed inside a run that is worth a remark: common practice, no source. */
const ENGINE_SHARE = 0.02;

/**
 * Climbs of the log.
 * @param context channels, calibration, mass and edits
 * @returns measured climbs in order of time, and what was left out
 * @throws OutOfRange when a value lies outside the relations of air data
 * @throws InputProblem when an edit names a file that is not in the recording
 */
export function runsFromLog(context: LogContext): RunsFound {
  const { segments, excluded, criteria } = segmentsOf(context);
  const found: RunsFound = { runs: [], excluded: [...excluded], criteria };
  segments.forEach((segment, i) => {
    const one = measured(context, segment, segment.label ?? `climb ${i + 1}`);
    if (typeof one === 'string')
      found.excluded.push({ fromSeconds: segment.fromSeconds, toSeconds: segment.toSeconds, reason: one });
    else found.runs.push(one);
  });
  return found;
}

function segmentsOf({ recording, edits }: LogContext) {
  if (edits) {
    const placed = placeSegments(recording, edits);
    return {
      segments: placed.segments.filter((one) => one.role === 'climb'),
      excluded: placed.dropped,
      criteria: ['set by hand'],
    };
  }
  const patient = recording.series.map((one) => ({ ...one, holdSeconds: Math.max(LOOK_PAST, one.holdSeconds) }));
  const found = findClimbs({ ...recording, series: patient }, CRITERIA);
  return {
    segments: found.segments.filter((one) => one.role === 'climb'),
    excluded: found.excluded.filter((one) => one.reason.startsWith('climb')),
    criteria: found.criteria,
  };
}

function measured(context: LogContext, segment: Segment, label: string): MeasuredRun | string {
  const { recording, channels, airplane, reader, mass } = context;
  const whole = samplesBetween(channels, segment.fromSeconds, segment.toSeconds);
  const { from: fromSeconds, to: toSeconds } = segment.byHand
    ? { from: segment.fromSeconds, to: segment.toSeconds }
    : settledSpan(whole, CRITERIA.dwell, LONGEST_GAP);
  const samples = between(whole, fromSeconds, toSeconds);
  const gap = longestGap(samples);
  if (gap > LONGEST_GAP) return `${label}: a gap of ${gap.toFixed(0)} s inside it`;
  const change = speedChange(samples);
  if (change > MOST_SPEED_CHANGE)
    return `${label}: airspeed changed by ${fromSi(change, 'kt').toFixed(0)} kt, more than ${fromSi(MOST_SPEED_CHANGE, 'kt').toFixed(0)} kt`;
  const ias = samples.ias.filter(Number.isFinite);
  if (ias.length === 0) return `${label}: no airspeed inside it`;
  const heavy = mass.at((fromSeconds + toSeconds) / 2);
  const { air, uCas, inCurve, flags } = reader.of(
    ias.reduce((sum, v) => sum + v / ias.length, 0),
    heavy,
  );
  const means = meansOf(recording, { fromSeconds, toSeconds }, ['engine-speed', 'manifold-pressure', 'fuel-flow']);
  const facts: RunFacts = {
    file: recording.tables[0]?.file ?? channels.altitude.file,
    label,
    heading: headingBetween(recording, airplane, fromSeconds, toSeconds),
    mass: heavy,
    engineSpeed: means['engine-speed'] ?? null,
    manifoldPressure: means['manifold-pressure'] ?? null,
    fuelFlow: means['fuel-flow'] ?? null,
    ends: segment.byHand ? 'byHand' : 'found',
    flags: [...flags, ...engineRemark(recording, { fromSeconds, toSeconds }, label)],
  };
  if (!samples.airTemperature.some(Number.isFinite)) return `${label}: no outside air temperature inside it`;
  const run = measureRun(samples, air, facts);
  if (!run) return `${label}: fewer than 20 usable samples or 20 s`;
  return {
    run: { ...run, flags: [...run.flags, ...lengthRemark(run), ...speedRemark(run, change)] },
    uCas,
    inCurve,
    slabs: slabsOf(samples, run, air, facts),
  };
}

function lengthRemark(run: ClimbRun): Flag[] {
  const lasted = run.toSeconds - run.fromSeconds;
  if (lasted >= RULE.seconds || run.gained >= RULE.gain) return [];
  const words = `${run.label} lasted ${lasted.toFixed(0)} s and gained ${run.gained.toFixed(0)} m: under ${RULE.seconds} s and ${RULE.gain} m`;
  return [flag('data-rule', words, { fromSeconds: run.fromSeconds, toSeconds: run.toSeconds })];
}

function speedRemark({ label }: ClimbRun, change: number): Flag[] {
  if (change <= FLAGGED_SPEED_CHANGE) return [];
  const words = `${label}: airspeed changed by ${fromSi(change, 'kt').toFixed(0)} kt, which its energy allows for; the rate holds for the mean`;
  return [flag('data-rule', words)];
}

function engineRemark(
  recording: Recording,
  segment: { fromSeconds: number; toSeconds: number },
  label: string,
): Flag[] {
  const series = seriesOf(recording, 'engine-speed');
  const within = series && meanBetween(series, segment.fromSeconds, segment.toSeconds);
  if (!within || within.scatter <= ENGINE_SHARE * within.mean) return [];
  const share = ((100 * within.scatter) / within.mean).toFixed(1);
  return [flag('power-not-constant', `${label}: engine speed varied by ${share} %`)];
}

function speedChange(samples: ClimbSamples): number {
  const slow = smooth(samples.t, samples.ias, SMOOTHING, LONGEST_GAP).filter(Number.isFinite);
  return slow.length === 0 ? 0 : Math.max(...slow) - Math.min(...slow);
}
