/** What a person may state for flight cooling: options, steady points written on a card, conditions of a prediction. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';

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

const temperature = stated('temperature').optional();

const main = { 'coolant-temperature': temperature, 'oil-temperature': temperature };

/** Heads a card has room for; one written without a number is the hottest. */
const heads = {
  'cylinder-head-temperature': temperature,
  'cylinder-head-temperature#1': temperature,
  'cylinder-head-temperature#2': temperature,
  'cylinder-head-temperature#3': temperature,
  'cylinder-head-temperature#4': temperature,
  'cylinder-head-temperature#5': temperature,
  'cylinder-head-temperature#6': temperature,
};

type HotName = keyof typeof main | keyof typeof heads;
const isHot = (key: string): key is HotName => key in main || key in heads;

/** `{ "fuel-flow": { value, unit }, "coolant-temperature": {..}, "cylinder-head-temperature#2": {..}, label?, .. }` */
const writtenPoint = z
  .strictObject({
    label: z.string().max(60).optional(),
    'outside-air-temperature': temperature,
    ...main,
    ...setting,
    ...heads,
  })
  .refine((one) => hotReadings(one).length > 0, 'a steady point needs a temperature: coolant, oil or a cylinder head');

/** One steady point as written, SI inside. */
export type WrittenPoint = z.output<typeof writtenPoint>;

/** The temperatures of a written point: glossary name and K. */
export function hotReadings(point: Partial<Record<HotName, { si: number } | undefined>>): [HotName, number][] {
  return Object.keys(point).flatMap((key): [HotName, number][] => {
    const read = isHot(key) ? point[key] : undefined;
    return isHot(key) && read ? [[key, read.si]] : [];
  });
}

export const flightPoints = z.strictObject({ kind: z.literal('cooling-flight'), points: z.array(writtenPoint).min(1) });
