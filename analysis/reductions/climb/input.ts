/** What a person may state for a climb reduction, and the figures of a climb card written by hand. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';

export const climbOptions = z.strictObject({
  /** mass at the first record of the first log */
  startMass: stated('mass').optional(),
  /** mass the rates are brought to; the airplane's maximum where left out */
  standardMass: stated('mass').optional(),
  massU95: stated('mass').optional(),
  /** span efficiency, measured in this airplane */
  spanEfficiency: z.strictObject({ value: z.number().min(0.4).max(1), u95: z.number().nonnegative() }).optional(),
  fuelDensity: stated('density').optional(),
});

export type ClimbOptions = z.output<typeof climbOptions>;

/** One climb read from a card: two heights and the time between them. */
export const climbPoint = z
  .strictObject({
    'indicated-airspeed': stated('speed'),
    bottom: stated('length'),
    top: stated('length'),
    time: stated('time'),
    'outside-air-temperature': stated('temperature'),
    'heading-magnetic': stated('angle').optional(),
    mass: stated('mass').optional(),
    'engine-speed': stated('frequency').optional(),
    label: z.string().optional(),
  })
  .refine((one) => one.top.si > one.bottom.si, { error: 'the top must be above the bottom', path: ['top'] })
  .refine((one) => one.time.si > 0, { error: 'the time must be above 0', path: ['time'] });

export const climbPoints = z.strictObject({ kind: z.literal('climb'), points: z.array(climbPoint).min(1) });
export type ClimbPoint = z.output<typeof climbPoint>;

/** What a prediction is asked for. */
export const climbConditions = z.strictObject({
  'calibrated-airspeed': stated('speed'),
  'density-altitude': stated('length'),
  mass: stated('mass').optional(),
});
