/** Signals two recorders may share, like with like, in the order in which they are trusted. */
import { channelOf, type LogChannel, type LogTable } from '../table.ts';
import { evenRate, evenSignal, highPassed } from './even-signal.ts';

interface Kind {
  what: string;
  quantities: readonly string[];
  /** the signal must have changed by this much, SI (common practice, no source) */
  moved: number;
  shape: (v: Float64Array, step: number) => Float64Array;
}

/** Steps of an encoder drown in a rate taken over less, s. */
const RATE_HALF_WINDOW = 8;
/** Wind and turns lie below, s. */
const SPEED_HALF_WINDOW = 30;
const ENGINE_HALF_WINDOW = 60;

const highPass = (halfWindow: number) => (v: Float64Array, step: number) => highPassed(v, step, halfWindow);

const KINDS: readonly Kind[] = [
  {
    what: 'altitude rate',
    quantities: ['pressure-altitude', 'reported-altitude', 'indicated-altitude', 'gps-altitude'],
    moved: 60,
    shape: (v, step) => evenRate(v, step, RATE_HALF_WINDOW),
  },
  {
    what: 'speed',
    quantities: ['indicated-airspeed', 'calibrated-airspeed', 'true-airspeed', 'ground-speed'],
    moved: 10,
    shape: highPass(SPEED_HALF_WINDOW),
  },
  { what: 'engine speed', quantities: ['engine-speed'], moved: 5, shape: highPass(ENGINE_HALF_WINDOW) },
  { what: 'manifold pressure', quantities: ['manifold-pressure'], moved: 5000, shape: highPass(ENGINE_HALF_WINDOW) },
  {
    what: 'outside air temperature',
    quantities: ['outside-air-temperature'],
    moved: 5,
    shape: highPass(ENGINE_HALF_WINDOW),
  },
];

export interface SharedSignal {
  /** what is compared, with the two columns, text */
  by: string;
  columns: { first: string; other: string };
  a: Float64Array;
  b: Float64Array;
  moved: boolean;
}

/**
 * The signals of two logs that can be compared, at one even step.
 * @param first the log that sets the clock, table
 * @param other the log to be put on it, table
 * @param step s
 * @returns signals in order of trust, possibly none
 */
export function sharedSignals(first: LogTable, other: LogTable, step: number): SharedSignal[] {
  return KINDS.flatMap((kind) => {
    const x = firstOf(first, kind.quantities);
    const y = firstOf(other, kind.quantities);
    if (!x || !y) return [];
    const [ea, eb] = [even(first, x, step), even(other, y, step)];
    return [
      {
        by: `${kind.what} (${x.column} with ${y.column})`,
        columns: { first: x.column, other: y.column },
        a: kind.shape(ea, step),
        b: kind.shape(eb, step),
        moved: range(ea) >= kind.moved && range(eb) >= kind.moved,
      },
    ];
  });
}

function firstOf(table: LogTable, quantities: readonly string[]): LogChannel | undefined {
  return quantities
    .flatMap((quantity) => channelOf(table, quantity) ?? [])
    .find((channel) => channel.unit !== null && channel.valid > 0.5);
}

function even(table: LogTable, channel: LogChannel, step: number): Float64Array {
  const { seconds, sampleRateHz } = table.time;
  return evenSignal(seconds, channel.values, step, sampleRateHz > 0 ? 2.5 / sampleRateHz : 0);
}

function range(v: Float64Array): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of v) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}
