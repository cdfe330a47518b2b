/** What a result carries for predictions and charts: the fit of each temperature and where it holds. SI. */
import * as z from 'zod';
import type { ChannelAnswer } from './channel-fit.ts';
import { logOf } from './terms.ts';

const freedom = z
  .custom<number | null>((nu) => nu === null || (typeof nu === 'number' && nu > 0))
  .transform((nu) => nu ?? Number.POSITIVE_INFINITY);
const termName = z.enum(['fuel-flow', 'manifold-times-speed', 'dynamic-pressure', 'cowl-exit-position']);
const range = z.tuple([z.number(), z.number()]);

const channelModelSchema = z.object({
  quantity: z.string(),
  part: z.enum(['coolant', 'oil', 'cylinder-head']),
  /** fully open from here, K; null where nothing regulates */
  open: z.number().nullable(),
  terms: z.array(z.object({ name: termName, centre: z.number() })),
  beta: z.array(z.number()),
  inverse: z.array(z.array(z.number())),
  s: z.number(),
  nu: freedom,
  shifted: z.array(
    z.object({
      sensor: z.enum(['hot', 'air', 'airspeed', 'door']),
      u: z.number(),
      nu: freedom,
      beta: z.array(z.number()),
    }),
  ),
  /** every variable, varied or not, and its logarithm at each point */
  variables: z.array(termName),
  flown: z.array(z.array(z.number())),
  /** K: mean of what may still have come at the points */
  stillToCome: z.number(),
});

export const flightModelSchema = z.object({
  channels: z.array(channelModelSchema),
  /** pressure altitudes and outside air of the fitted points; null where no altitude is known */
  heights: range.nullable(),
  airs: range.nullable(),
  /** indicated and calibrated airspeeds of the points, rising, m/s */
  airspeeds: z.array(z.object({ ias: z.number(), cas: z.number() })),
});

export type FlightModel = z.output<typeof flightModelSchema>;
export type ChannelModel = FlightModel['channels'][number];

/**
 * The model of the answers.
 * @param answers one a temperature, list
 * @param stillToCome mean one-sided rest of an answer's points, K, function
 * @returns what can be stored as JSON; temperatures without a fit are not in it
 */
export function flightModel(
  answers: readonly ChannelAnswer[],
  stillToCome: (answer: ChannelAnswer) => number,
): FlightModel {
  const fitted = answers.flatMap((one) => one.fitted);
  const spread = (values: readonly number[]): [number, number] | null =>
    values.length === 0 ? null : [Math.min(...values), Math.max(...values)];
  const speeds = answers
    .flatMap((one) => one.readings)
    .flatMap(({ setting: { ias, cas } }) => (ias === null || cas === null ? [] : [{ ias, cas }]))
    .sort((a, b) => a.ias - b.ias);
  return {
    channels: answers.flatMap((answer): ChannelModel[] => {
      const { fit, quantity, part, governing, shifted, variables, fitted: points } = answer;
      if (!fit) return [];
      return [
        {
          quantity,
          part,
          open: governing === null || governing === 'none' ? null : governing.open,
          terms: fit.terms,
          beta: fit.beta,
          inverse: fit.inverse,
          s: fit.scatter.s,
          nu: fit.scatter.nu,
          shifted,
          variables,
          flown: points.map(({ setting }) => variables.map((name) => logOf(name, setting) ?? Number.NaN)),
          stillToCome: stillToCome(answer),
        },
      ];
    }),
    heights: spread(fitted.flatMap(({ setting }) => (setting.height === null ? [] : [setting.height]))),
    airs: spread(fitted.map(({ air }) => air)),
    airspeeds: speeds,
  };
}
