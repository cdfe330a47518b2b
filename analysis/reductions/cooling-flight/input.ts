/** What a person may state for flight cooling: options, steady points written on a card, conditions of a prediction. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';
import { quantityOf } from '../../units/index.ts';

/** What is written of one steady point, or asked of one condition. */
const setting = {
  'fuel-flow': stated('volume-flow').optional(),
  'manifold-pressure': stated('pressure').optional(),
  'engine-speed': stated('frequency').optional(),
  'indicated-airspeed': stated('speed').optional(),
  'calibrated-airspeed': stated('speed').optional(),
  'pressure-altitude': stated('length').optional(),
  'cowl-exit-position': stated('ratio').optional(),
};

/** Conditions of the next flight; what is left out is that of the points flown. */
export const flightConditions = z.strictObject({
  ...setting,
  /** outside air, static; the hot day at that height where left out */
  'outside-air-temperature': stated('temperature').optional(),
});

export type FlightConditions = z.output<typeof flightConditions>;

const thermostat = z.union([
  z.literal('none'),
  z.strictObject({ start: stated('temperature'), open: stated('temperature') }),
]);

export const flightOptions = z.strictObject({
  /** coolant: in place of the airplane's own */
  thermostat: thermostat.optional(),
  /** of the oil cooler, which the airplane's description does not hold */
  oilThermostat: thermostat.optional(),
  /** outside air as read by hand, where it was not logged */
  airTemperature: stated('temperature').optional(),
  hotDay: z.enum(['14cfr23', 'cs22']).optional(),
  /** air of a hotter day at the field, in place of the standard one */
  hotDayAir: stated('temperature').optional(),
  /** how far one steady point usually differs from the next, in place of the default */
  pointScatter: stated('temperature-difference').optional(),
  /** margins are wanted at these conditions too */
  conditions: z.array(flightConditions.extend({ label: z.string().min(1).max(60).optional() })).optional(),
});

export type FlightOptions = z.output<typeof flightOptions>;

const TEMPERATURE = stated('temperature');
const HOT = new Set(['coolant-temperature', 'oil-temperature', 'cylinder-head-temperature']);
const FIXED = z.object({
  ...setting,
  'outside-air-temperature': TEMPERATURE.optional(),
  label: z.string().max(60).optional(),
});
const IGNORED = new Set(['note', 'coolant-temperature-in', 'inlet-air-temperature']);

/** One steady point as written, SI. */
export interface WrittenPoint extends z.output<typeof FIXED> {
  /** hot channels by glossary name, K */
  hot: ReadonlyMap<string, number>;
}

/** `{ "fuel-flow": { value, unit }, "coolant-temperature": {..}, "cylinder-head-temperature#2": {..}, label?, .. }` */
const writtenPoint = z.record(z.string(), z.unknown()).transform((row, context): WrittenPoint => {
  const hot = new Map<string, number>();
  const rest: Record<string, unknown> = {};
  const say = (path: PropertyKey[], message: string) =>
    context.addIssue({ code: 'custom', path: path.map(String), message });
  for (const [key, cell] of Object.entries(row)) {
    if (IGNORED.has(key)) continue;
    if (HOT.has(quantityOf(key)?.name ?? '')) {
      const read = TEMPERATURE.safeParse(cell);
      if (read.success) hot.set(key, read.data.si);
      else for (const issue of read.error.issues) say([key, ...issue.path], issue.message);
    } else if (key in FIXED.shape) rest[key] = cell;
    else say([key], `not a reading of a steady point; known are ${[...Object.keys(FIXED.shape), ...HOT].join(', ')}`);
  }
  const read = FIXED.safeParse(rest);
  if (!read.success) for (const issue of read.error.issues) say(issue.path, issue.message);
  if (hot.size === 0) say([], 'a steady point needs a temperature: coolant, oil or a cylinder head');
  return { ...(read.success ? read.data : {}), hot };
});

export const flightPoints = z.strictObject({ kind: z.literal('cooling-flight'), points: z.array(writtenPoint).min(1) });
