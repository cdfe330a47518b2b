/** What a climb result carries for predictions: the curve of each band, where it was flown, and its scatter. */
import * as z from 'zod';
import type { Compared } from './rows.ts';

const bandSchema = z.object({
  /** density altitude, m */
  Hd: z.number(),
  form: z.enum(['quadratic', 'constant-power']),
  parameters: z.array(z.number()),
  covariance: z.array(z.array(z.number())),
  nu: z.number(),
  /** scatter of one climb, m/s */
  s: z.number(),
  /** true airspeeds flown, m/s */
  flown: z.tuple([z.number(), z.number()]),
  /** change of rate with density altitude, 1/s */
  lapse: z.number(),
  /** standard uncertainty of the rate from what is off in all climbs at once, m/s */
  common: z.number(),
});

export const climbModelSchema = z.object({
  bands: z.array(bandSchema),
  /** mass the rates stand for, kg; null for the masses flown */
  mass: z.number().nullable(),
});

export type ClimbModel = z.output<typeof climbModelSchema>;
export type ClimbBand = z.output<typeof bandSchema>;

/**
 * The model of a result.
 * @param compared bands with their curves
 * @param mass mass the rates stand for, kg, or null
 * @returns plain data for JSON
 */
export function climbModel({ solved }: Compared, mass: number | null): ClimbModel {
  return {
    mass,
    bands: solved.flatMap(({ band, optimum, common }): ClimbBand[] => {
      if (!optimum) return [];
      const speeds = band.points.map((point) => point.V);
      return [
        {
          Hd: band.Hd,
          ...optimum.curve,
          s: optimum.scatter.s,
          flown: [Math.min(...speeds), Math.max(...speeds)],
          lapse: band.lapse.value,
          common: common.rate,
        },
      ];
    }),
  };
}
