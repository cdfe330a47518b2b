/** The answer of flight cooling in the shape every result has. */
import { LIMIT_FIELD, limitsOf, PART_WORDS } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { Result, ResultSegment } from '../../results/index.ts';
import { type ReductionInput, resultShell } from '../reduction.ts';
import type { ChannelAnswer } from './channel-fit.ts';
import { flightModel } from './flight-model.ts';
import { hotDayOf } from './hot-day.ts';
import type { FlightOptions } from './input.ts';
import { conditionMargins, type Margin, pointMargins } from './margins.ts';
import { gainWords, nextSegments } from './next-segment.ts';
import { coolingFlightNote } from './note.ts';
import { channelWords, isOpen, type SteadyReading, stillToCome } from './point.ts';
import { exponentQuantities, leastMargins } from './quantities.ts';
import { coefficientsTable, exponentsOf, marginsTable, nextSegmentTable, steadyPointsTable } from './tables.ts';

export interface FlightAnswer {
  input: ReductionInput;
  options: FlightOptions;
  answers: ChannelAnswer[];
  flags: Flag[];
  /** readings over a limit in flight */
  events: Result['comparisons'];
}

/**
 * The result of the answers.
 * @param answer one a temperature, with remarks and events
 * @returns the result
 * @throws OutOfRange outside the relations of air data
 */
export function buildResult({ input, options, answers, flags, events }: FlightAnswer): Result {
  const { airplane } = input;
  const hotDay = hotDayOf(airplane, options);
  const model = flightModel(answers, toCome);
  const ofPoints = answers.flatMap((answer) => pointMargins(answer, airplane, hotDay));
  const ofConditions = conditionMargins(options, model, airplane, hotDay);
  const margins = [...ofPoints, ...ofConditions];
  const exponents = answers.flatMap(exponentsOf);
  const candidates = answers.map((answer) => nextSegments(answer).slice(0, 3));
  const next = nextSegmentTable(candidates.flat());
  const readings = answers.flatMap((answer) => answer.readings);
  const limits = missingLimits(answers, input);
  return {
    ...resultShell('cooling-flight', coolingFlightNote, input),
    status: 'reduced',
    quantities: [...leastMargins(answers, ofPoints), ...exponentQuantities(exponents)],
    tables: [
      steadyPointsTable(answers),
      ...(exponents.length > 0 ? [coefficientsTable(exponents)] : []),
      marginsTable(margins),
      ...(next ? [next] : []),
    ],
    segments: segmentsOf(readings),
    comparisons: [...events, ...[...worstPoints(answers, ofPoints), ...ofConditions].flatMap(compared)],
    flags: [
      flag('method-note', `margins are taken for ${hotDay.words}`),
      ...flags,
      ...limits,
      ...answers.flatMap((answer) => answer.flags),
      ...margins.flatMap((one) => one.flags),
      ...candidates.flatMap(([best]) =>
        best ? [flag('method-note', `${channelWords(best.quantity)}: ${gainWords(best)}`)] : [],
      ),
    ],
    model: {
      coolingFlight: model,
      limits: Object.fromEntries(answers.map(({ part }) => [part, limitsOf(airplane, part)])),
    },
  };
}

const compared = ({ limit, comparison }: Margin) => (limit === null ? [] : [comparison]);

/** Of each temperature the point with the least left after its doubt; the table holds the others with their outcome. */
function worstPoints(answers: readonly ChannelAnswer[], margins: readonly Margin[]): Margin[] {
  const left = ({ margin, doubt, toCome: rise }: Margin) =>
    margin === null ? Number.POSITIVE_INFINITY : margin - (doubt?.u95 ?? 0) - rise;
  return answers.flatMap(({ quantity }) =>
    margins
      .filter((one) => one.quantity === quantity)
      .toSorted((a, b) => (left(a) === left(b) ? 0 : left(a) - left(b)))
      .slice(0, 1),
  );
}

function toCome({ fitted }: ChannelAnswer): number {
  return fitted.reduce((sum, one) => sum + stillToCome(one) / fitted.length, 0);
}

function missingLimits(answers: readonly ChannelAnswer[], { airplane }: ReductionInput): Flag[] {
  const parts = [...new Set(answers.filter((one) => one.readings.some(isOpen)).map((one) => one.part))];
  return parts
    .filter((part) => limitsOf(airplane, part).limit === null)
    .map((part) =>
      flag(
        'limit-missing',
        `there is no ${PART_WORDS[part]} limit (field limits.${LIMIT_FIELD[part]}.limit): its margins are withheld. Enter it with its source on the Airplane page`,
      ),
    );
}

/** One segment a point: from the first of its temperatures at rest to the last. */
function segmentsOf(readings: readonly SteadyReading[]): ResultSegment[] {
  const logged = readings.filter((one) => !one.written);
  return [...new Set(logged.map((one) => one.point))].map((point) => {
    const own = logged.filter((one) => one.point === point);
    const [first] = own;
    return {
      file: first?.file ?? '',
      fromSeconds: Math.min(...own.map((one) => one.fromSeconds)),
      toSeconds: Math.max(...own.map((one) => one.toSeconds)),
      role: 'steady',
      label: first?.label ?? '',
      means: {
        ...(first?.setting.measure === 'fuel-flow' ? { 'fuel-flow': first.setting.power } : {}),
        'indicated-airspeed': first?.setting.ias ?? null,
        'pressure-altitude': first?.setting.height ?? null,
        'cowl-exit-position': first?.setting.door ?? null,
        'outside-air-temperature': first?.air ?? null,
        ...Object.fromEntries(own.map((one) => [one.quantity, one.temperature])),
      },
    };
  });
}
