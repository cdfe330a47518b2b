/** What a person may state for a cooling climb: options, figures written on a card, and conditions of a prediction. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';
import { quantityOf } from '../../units/index.ts';

const airAtHeight = z.strictObject({
  'pressure-altitude': stated('length'),
  'outside-air-temperature': stated('temperature'),
});

export const coolingClimbOptions = z.strictObject({
  /** in place of the airplane's own: no thermostat fitted, or where it starts to open and is fully open */
  thermostat: z
    .union([z.literal('none'), z.strictObject({ start: stated('temperature'), open: stated('temperature') })])
    .optional(),
  /** what the head sensors sit on; barrels are corrected by 0.7 of the air's difference */
  heads: z.enum(['heads', 'barrels']).default('heads'),
  /** outside air as read by hand at one height or more, where it was not logged */
  airByHeight: z.array(airAtHeight).min(1).optional(),
  hotDay: z.enum(['14cfr23', 'cs22']).optional(),
  /** a hotter day in place of the standard one: its air at `hotDayHeight`, the field where that is left out */
  hotDayAir: stated('temperature').optional(),
  hotDayHeight: stated('length').optional(),
  /** how far the peak of one climb usually differs from the next, in place of the default */
  runScatter: stated('temperature-difference').optional(),
});

export type CoolingClimbOptions = z.output<typeof coolingClimbOptions>;

/** Quantities a card of a cooling climb may carry, beside the time; heads by number. */
const READ_FROM_CARDS = new Set([
  'coolant-temperature',
  'oil-temperature',
  'cylinder-head-temperature',
  'outside-air-temperature',
  'inlet-air-temperature',
  'pressure-altitude',
  'indicated-airspeed',
  'engine-speed',
  'manifold-pressure',
  'fuel-flow',
  'cowl-exit-position',
]);

/** Written beside the figures and kept out of the computation. */
const IGNORED = new Set(['note', 'fuel-pressure', 'oil-pressure', 'vertical-speed']);

/** One row of a card, SI. */
export interface WrittenReading {
  seconds: number;
  run: string;
  /** the pilot saw the temperatures fall again after this climb's highest reading */
  peaked: boolean;
  values: ReadonlyMap<string, number>;
}

const TIME = stated('time');

/** `{ time: { value, unit }, "cylinder-head-temperature#1": { value, unit }, "pressure-altitude": ..., run: "A", ... }` */
const writtenReading = z.record(z.string(), z.unknown()).transform((row, context): WrittenReading => {
  const say = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
  const values = new Map<string, number>();
  let seconds = Number.NaN;
  for (const [key, cell] of Object.entries(row)) {
    if (key === 'run' || key === 'peaked' || IGNORED.has(key)) continue;
    const quantity = quantityOf(key);
    if (key !== 'time' && !(quantity && READ_FROM_CARDS.has(quantity.name))) {
      say([key], `not a reading of a cooling climb; known are time, run, peaked, ${[...READ_FROM_CARDS].join(', ')}`);
      continue;
    }
    const schema = key === 'time' || !quantity ? TIME : stated(quantity.dimension);
    const read = schema.safeParse(cell);
    if (!read.success) {
      for (const issue of read.error.issues) say([key, ...issue.path.map(String)], issue.message);
    } else if (key === 'time') seconds = read.data.si;
    else values.set(key, read.data.si);
  }
  if (row.time === undefined) say(['time'], 'each reading needs its time since the climb began, { value, unit }');
  if (row.peaked !== undefined && typeof row.peaked !== 'boolean') say(['peaked'], 'true or false');
  return {
    seconds,
    run: row.run === undefined ? '' : String(row.run),
    peaked: row.peaked === true,
    values,
  };
});

export const coolingClimbPoints = z.strictObject({
  kind: z.literal('cooling-climb'),
  points: z.array(writtenReading).min(1),
});

/** Conditions of the next climb. */
export const coolingClimbConditions = z.strictObject({
  /** air expected, and the pressure altitude it is expected at; the measured climb's start where left out */
  'outside-air-temperature': stated('temperature'),
  'pressure-altitude': stated('length').optional(),
  /** pressure altitude the next climb starts from; that of the measured one where left out */
  'start-pressure-altitude': stated('length').optional(),
  'indicated-airspeed': stated('speed').optional(),
});

export type CoolingClimbConditions = z.output<typeof coolingClimbConditions>;
