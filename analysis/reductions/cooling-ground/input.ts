/** What a person may state for a ground run: options, figures written on a card, and conditions of a prediction. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';
import { quantityOf } from '../../units/index.ts';

export const coolingOptions = z.strictObject({
  /** in place of the airplane's own: no thermostat fitted, or where it starts to open and is fully open */
  thermostat: z
    .union([z.literal('none'), z.strictObject({ start: stated('temperature'), open: stated('temperature') })])
    .optional(),
  /** outside air as read by hand, where it was not logged */
  airTemperature: stated('temperature').optional(),
  hotDay: z.enum(['14cfr23', 'cs22']).optional(),
  /** air of a hotter day, in place of the standard one */
  hotDayAir: stated('temperature').optional(),
  pressureAltitude: stated('length').optional(),
  /** how far one run usually differs from the next, in place of the default */
  runScatter: stated('temperature-difference').optional(),
});

export type CoolingOptions = z.output<typeof coolingOptions>;

/** Quantities a card of a ground run may carry, beside the time; heads by number. */
const READ_FROM_CARDS = new Set([
  'coolant-temperature',
  'coolant-temperature-in',
  'oil-temperature',
  'cylinder-head-temperature',
  'outside-air-temperature',
  'inlet-air-temperature',
  'engine-speed',
  'propeller-speed',
  'manifold-pressure',
  'fuel-flow',
  'cowl-exit-position',
  'cooling-fan-state',
  'pressure-altitude',
]);

/** Written beside the figures and kept out of the computation. */
const IGNORED = new Set(['note', 'wind-speed', 'wind-direction']);

/** One reading of one moment, SI. */
export interface WrittenReading {
  seconds: number;
  run: string;
  values: ReadonlyMap<string, number>;
}

const onOff = z.union([z.number(), z.boolean(), z.enum(['on', 'off'])]);
const TIME = stated('time');

/** `{ time: { value, unit }, "coolant-temperature": { value, unit }, "cooling-fan-state": "on", run: "A", ... }` */
const writtenReading = z.record(z.string(), z.unknown()).transform((row, context): WrittenReading => {
  const say = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
  const values = new Map<string, number>();
  let seconds = Number.NaN;
  for (const [key, cell] of Object.entries(row)) {
    if (key === 'run' || IGNORED.has(key)) continue;
    const quantity = quantityOf(key);
    if (key !== 'time' && !(quantity && READ_FROM_CARDS.has(quantity.name))) {
      say([key], `not a reading of a ground run; known are time, run, ${[...READ_FROM_CARDS].join(', ')}`);
      continue;
    }
    const number =
      key === 'time' ? readStated(TIME, cell) : quantity ? readCell(quantity.dimension, cell) : ['no such quantity'];
    if (typeof number === 'number') {
      if (key === 'time') seconds = number;
      else values.set(key, number);
    } else for (const message of number) say([key], message);
  }
  if (row.time === undefined) say(['time'], 'each reading needs its time since the run began, { value, unit }');
  return { seconds, run: row.run === undefined ? '' : String(row.run), values };
});

function readCell(dimension: Parameters<typeof stated>[0], cell: unknown): number | string[] {
  const plain = onOff.safeParse(cell);
  if (dimension === 'none' && plain.success)
    return plain.data === 'on' ? 1 : plain.data === 'off' ? 0 : Number(plain.data);
  return readStated(stated(dimension), cell);
}

function readStated(schema: ReturnType<typeof stated>, cell: unknown): number | string[] {
  const read = schema.safeParse(cell);
  return read.success
    ? read.data.si
    : read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`.trim());
}

export const coolingPoints = z.strictObject({
  kind: z.literal('cooling-ground'),
  points: z.array(writtenReading).min(1),
});

/** Conditions of the next run. */
export const coolingConditions = z.strictObject({
  'engine-speed': stated('frequency'),
  'cowl-exit-position': stated('ratio').optional(),
  'cooling-fan-state': onOff
    .transform((state) => (state === 'on' ? 1 : state === 'off' ? 0 : Number(state)))
    .optional(),
  /** air expected; the air of the measured run where left out */
  'outside-air-temperature': stated('temperature').optional(),
  /** temperature at the start; that of the measured run where left out */
  start: stated('temperature').optional(),
  /** how far ahead the table goes, at most half as long again as the measured run */
  duration: stated('time').optional(),
});

export type CoolingConditions = z.output<typeof coolingConditions>;
