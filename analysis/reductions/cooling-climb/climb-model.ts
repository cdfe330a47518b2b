/** A peak as the next climb needs it: kept in the result's model, so that a prediction needs no raw data. */
import * as z from 'zod';
import { HOT_DAY_FACTOR } from '../../models/index.ts';
import type { Answer } from './answer.ts';
import { type Reference, readingSources } from './corrected.ts';

export const peakModelSchema = z.object({
  quantity: z.string(),
  part: z.enum(['coolant', 'oil', 'cylinder-head', 'cylinder-barrel']),
  climb: z.string(),
  /** what the peak read, K, in which air and at which pressure altitude, K and m */
  peak: z.number(),
  air: z.number(),
  height: z.number(),
  /** where the climb began: pressure altitude, m, and air, K */
  fromHeight: z.number(),
  fromAir: z.number(),
  /** m/s, where it was logged */
  airspeed: z.number().nullable(),
  /** share of the air's difference that it follows */
  factor: z.number(),
  noiseU: z.number().nonnegative(),
  noiseNu: z.number().positive(),
  /** scatter between two climbs, K */
  repeatU: z.number().nonnegative(),
  repeatNu: z.number().positive(),
  airU: z.number().nonnegative(),
  airNu: z.number().positive(),
  /** over the air that entered, K: what the doubt of the one-to-one rule is a share of */
  over: z.number().nonnegative(),
  powerFalls: z.boolean(),
});

export type PeakModel = z.infer<typeof peakModelSchema>;

/** Degrees of freedom that count as endless: JSON has no infinity. */
const ENDLESS = 1e6;

/**
 * The model of a peak.
 * @param one an answer, object
 * @param reference sensors and scatter, object
 * @returns the model, or null where there was no peak or something regulated it
 */
export function peakModel(one: Answer, reference: Reference): PeakModel | null {
  const { course, peak, corrected, settings } = one;
  if (!corrected) return null;
  const { way } = course;
  const noise = readingSources(course, peak.at, reference).filter(({ part }) => part !== 'calibration');
  const over = (course.T[peak.at] ?? 0) - ((way.inlet ?? way.air)[peak.at] ?? 0);
  return {
    quantity: course.quantity,
    part: course.part,
    climb: way.label,
    peak: peak.highest,
    air: way.air[peak.at] ?? 0,
    height: way.height[peak.at] ?? 0,
    fromHeight: way.height[0] ?? 0,
    fromAir: way.air[0] ?? 0,
    airspeed: settings['indicated-airspeed'] ?? null,
    factor: HOT_DAY_FACTOR[course.part],
    noiseU: Math.hypot(...noise.map(({ u }) => u)),
    noiseNu: Math.min(ENDLESS, course.noiseNu),
    // this climb was one draw, the next is another
    repeatU: reference.repeat.s * Math.SQRT2,
    repeatNu: Math.min(ENDLESS, reference.repeat.nu),
    airU: reference.air.sensorU,
    airNu: Math.min(ENDLESS, reference.air.sensorNu),
    over: Math.abs(over),
    powerFalls: one.powerFalls,
  };
}
