/** The story of flight cooling: steady points from logs and cards, one fit a temperature, margins on the hot day. */
import type { Airplane } from '../../airplane/index.ts';
import { type Governing, governingOf, type StatedThermostat } from '../../models/index.ts';
import { type Flag, flag, OutOfRange, parsedBy, type Refusal, refusal } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import type { Excluded } from '../../segments/index.ts';
import { type ReductionInput, refusedResult, resultShell } from '../reduction.ts';
import { airReader } from './air-data.ts';
import { buildResult } from './build-result.ts';
import { channelAnswer } from './channel-fit.ts';
import { flightChannels, type HotPart } from './channels.ts';
import { POINT_SCATTER } from './fit.ts';
import { flightGrid } from './flight-grid.ts';
import { readingsWritten } from './from-card.ts';
import { holdsFound, holdsSet } from './holds.ts';
import { type FlightOptions, flightOptions, flightPoints, type WrittenPoint } from './input.ts';
import { flightEvents } from './limit-watch.ts';
import { coolingFlightNote } from './note.ts';
import type { SteadyReading } from './point.ts';
import { steadyReadings } from './readings.ts';

interface Gathered {
  readings: SteadyReading[];
  excluded: Excluded[];
  flags: Flag[];
  comparisons: Result['comparisons'];
}

/**
 * Reduce cooling in steady flight.
 * @param input aligned logs or written points, the airplane, an accepted calibration, segments and options
 * @returns the result, or a refusal with its reason
 * @throws InputProblem when points, options or segments do not fit their schema
 */
export function reduceCoolingFlight(input: ReductionInput): Result {
  const options = parsedBy(flightOptions, input.options ?? {}, 'bad-request');
  const points = input.points === undefined ? [] : parsedBy(flightPoints, input.points, 'bad-points').points;
  try {
    return reduced(input, options, points);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(input, refusal('out-of-domain', `${error.message}; a unit or a channel may be wrong`));
  }
}

function reduced(input: ReductionInput, options: FlightOptions, points: readonly WrittenPoint[]): Result {
  const governing = thermostats(input.airplane, options);
  const logged = fromLog(input, options, governing);
  if ('code' in logged) return refused(input, logged);
  const first = logged.readings.reduce((most, one) => Math.max(most, one.point + 1), 0);
  const reader = airReader(input.airplane, input.calibration, false);
  const written = readingsWritten(points, reader, governing, options.airTemperature?.si, first);
  const readings = [...logged.readings, ...written.readings];
  const flags = [
    ...logged.flags,
    ...(points.length > 0 && !input.recording ? reader.flags : []),
    ...(written.readings.length > 0
      ? [
          flag(
            'method-note',
            `${points.length} points were written by hand: that they were steady is the writer’s word`,
          ),
        ]
      : []),
    ...logged.excluded.map(({ reason, ...span }) => flag('excluded', reason, span)),
  ];
  if (written.withoutAir > 0)
    flags.push(flag('excluded', `${written.withoutAir} written points have no outside air temperature`));
  if (readings.length === 0) return refused(input, noneFound(input, points), flags);
  const s0 = options.pointScatter?.si ?? POINT_SCATTER.s0;
  const answers = [...new Set(readings.map((one) => one.quantity))].flatMap((quantity) => {
    const [head, ...rest] = readings.filter((one) => one.quantity === quantity);
    return head ? [channelAnswer([head, ...rest], governing(head.part), input.airplane, s0)] : [];
  });
  return buildResult({ input, options, answers, flags, events: logged.comparisons });
}

function thermostats(airplane: Airplane | undefined, options: FlightOptions): (part: HotPart) => Governing {
  const oil: StatedThermostat | undefined = options.oilThermostat;
  const ofOil: Governing =
    oil === undefined
      ? null
      : oil === 'none'
        ? 'none'
        : { start: oil.start.si, open: oil.open.si, startAssumed: false };
  return (part) => (part === 'oil' ? ofOil : governingOf(airplane, options.thermostat, part));
}

function fromLog(
  input: ReductionInput,
  options: FlightOptions,
  governing: (part: HotPart) => Governing,
): Gathered | Refusal {
  const { recording, airplane, segments } = input;
  if (!recording) return { readings: [], excluded: [], flags: [], comparisons: [] };
  const channels = flightChannels(recording, airplane, options.airTemperature !== undefined);
  if ('code' in channels) return channels;
  const flight = flightGrid(channels, recording.tables[0]?.file ?? '');
  const found = segments ? { ...holdsSet(recording, segments), criteria: [] } : { ...holdsFound(flight), excluded: [] };
  const reader = airReader(airplane, input.calibration, channels.calibrated);
  const context = { flight, reader, airStated: options.airTemperature?.si, governing };
  const { readings, excluded } = steadyReadings(context, found.holds);
  const how = segments
    ? found.holds.map((one) =>
        flag('set-by-hand', `${one.label ?? 'steady'}: ${one.reason}`, {
          fromSeconds: one.fromSeconds,
          toSeconds: one.toSeconds,
        }),
      )
    : [flag('method-note', `steady flight found by: ${found.criteria.join('; ')}`)];
  const events = flightEvents(channels, recording, airplane);
  return {
    readings,
    excluded: [...found.excluded, ...excluded],
    flags: [
      ...channels.flags,
      ...reader.flags,
      ...how,
      ...events.flags,
      ...measureFlags(flight.measure, flight.power !== null),
    ],
    comparisons: events.comparisons,
  };
}

function measureFlags(measure: string, known: boolean): Flag[] {
  if (!known)
    return [
      flag(
        'not-resolved',
        'neither fuel flow nor manifold pressure with engine speed was logged: points cannot be compared by power',
      ),
    ];
  if (measure === 'fuel-flow') return [];
  return [
    flag(
      'assumed-value',
      'no fuel flow was logged: manifold pressure times engine speed stands for power, at one mixture technique',
    ),
  ];
}

function noneFound(input: ReductionInput, points: readonly WrittenPoint[]): Refusal {
  if (points.length > 0 && !input.recording)
    return refusal(
      'missing-channel',
      'no written point has an outside air temperature, and none was stated (option airTemperature)',
    );
  if (!input.recording) return refusal('too-few-points', 'neither a log nor written points were given');
  return refusal(
    'no-segments',
    'no stretch of the log held power, airspeed, height and door until a temperature came to rest',
  );
}

function refused(input: ReductionInput, why: Refusal, flags: Flag[] = []): Result {
  return refusedResult(resultShell('cooling-flight', coolingFlightNote, input), why, flags);
}
