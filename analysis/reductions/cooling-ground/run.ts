/** One run from recording to measured points: channels, trace, holds, points. */
import type { Airplane } from '../../airplane/index.ts';
import type { Recording } from '../../logs/index.ts';
import { type Governing, governingOf } from '../../models/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import { placeSegments, type SegmentEdit } from '../../segments/index.ts';
import { type GroundChannels, groundChannels } from './channels.ts';
import type { CoolingOptions } from './input.ts';
import { type Measured, measurePoint } from './measure.ts';
import { oilPoints, pointsFound, pointsSet, settlingSeconds, type TestPoint } from './points.ts';
import { holdsOf } from './settings.ts';
import { sharedTau, tellsItsTau } from './shared-tau.ts';
import { type HotTrace, type Trace, traceOf } from './trace.ts';

export interface Run {
  trace: Trace;
  channels: GroundChannels;
  governing: Governing;
  main: Measured[];
  oil: Measured[];
  flags: Flag[];
}

/**
 * Measure one run.
 * @param recording aligned logs or written figures, object
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @param edits segments set by hand, or undefined
 * @returns the run, or a refusal
 * @throws InputProblem when an edit names a file that is not there
 */
export function measureRun(
  recording: Recording,
  airplane: Airplane | undefined,
  options: CoolingOptions,
  edits: readonly SegmentEdit[] | undefined,
): Run | Refusal {
  const channels = groundChannels(recording, airplane);
  if ('code' in channels) return channels;
  const { trace, flags } = traceOf(recording, channels, options.airTemperature?.si);
  const part = trace.main[0]?.part ?? 'coolant';
  const governing = governingOf(airplane, options.thermostat, part);
  const settling = settlingSeconds(airplane, part);
  const holds = holdsOf(trace);
  const placed = edits && edits.length > 0 ? placeSegments(recording, edits) : null;
  const found = placed
    ? pointsSet(trace, holds, governing, placed.segments, settling)
    : pointsFound(trace, holds, governing, settling);
  const dropped = (placed?.dropped ?? []).map(({ reason, ...span }) => flag('excluded', reason, span));
  if (found.points.length === 0) {
    return refusal(
      'no-segments',
      `${trace.file}: no stretch of a minute or more with ${channels.speed.column}, door and fan held still and the temperature read; set the segments by hand if the trace shows one`,
    );
  }
  const oil = trace.oil;
  const oilOf = (hot: HotTrace) =>
    placed ? found.points : oilPoints(trace, holds, hot, settlingSeconds(airplane, 'oil'));
  const measureAll = (pairs: readonly (readonly [TestPoint, HotTrace])[]) => {
    const alone = pairs.map(([point, hot]) => measurePoint(trace, point, hot, airplane));
    const prior = sharedTau(alone);
    return alone.map((one) =>
      one.fit && !tellsItsTau(one) ? measurePoint(trace, one.point, one.hot, airplane, one.fit.again(prior)) : one,
    );
  };
  return {
    trace,
    channels,
    governing,
    main: measureAll(found.points.map((point) => [point, point.hot] as const)),
    oil: oil ? measureAll(oilOf(oil).map((point) => [point, oil] as const)) : [],
    flags: [...channels.flags, ...flags, ...found.flags, ...dropped],
  };
}
