/** Figures of a weighing and of load cases as they are written on a card, and what a person may state about them. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';

const name = z.string().min(1).max(60);

/** One scale, one run. */
const weighing = z.strictObject({
  role: z.literal('weighing'),
  run: z.int().min(1),
  place: name,
  reading: stated('mass'),
  tare: stated('mass').optional(),
  arm: stated('length'),
});

/** Something on board that does not belong to the empty airplane, or something that does and was missing. */
const correction = z.strictObject({
  role: z.enum(['aboard', 'missing']),
  name,
  mass: stated('mass').optional(),
  volume: stated('volume').optional(),
  arm: stated('length'),
});

/** One item of a load case: a station or a tank of the description, or a place of its own with its arm. */
const load = z.strictObject({
  role: z.literal('load'),
  case: name,
  station: name,
  mass: stated('mass').optional(),
  volume: stated('volume').optional(),
  arm: stated('length').optional(),
});

/** A centre of gravity wanted for a case, and where ballast may go. */
const wanted = z.strictObject({
  role: z.literal('wanted'),
  case: name,
  arm: stated('length'),
  station: name,
});

const point = z.discriminatedUnion('role', [weighing, correction, load, wanted]);

export const weightPoints = z.strictObject({ kind: z.literal('weight-balance'), points: z.array(point) });

export const weightOptions = z.strictObject({
  /** one scale moved round the wheels, or a scale under each */
  scales: z.enum(['independent', 'one-moved']).default('independent'),
  /** U95 of one scale */
  scaleU95: stated('mass').optional(),
  /** U95 of a gain error that all readings share */
  gainU95: stated('ratio').optional(),
  armU95: stated('length').optional(),
  levelU95: stated('angle').optional(),
  heightOfCg: stated('length').optional(),
  fuelDensity: stated('density').optional(),
  /** smallest bag or plate of ballast on hand */
  ballastStep: stated('mass').optional(),
});

export type WeightPoints = z.output<typeof weightPoints>;
export type WeightPoint = z.output<typeof point>;
export type WeightOptions = z.output<typeof weightOptions>;
export type WeighingPoint = z.output<typeof weighing>;
export type LoadPoint = z.output<typeof load>;
export type WantedPoint = z.output<typeof wanted>;

/** Where a prediction is asked: one load case, as on the card. */
export const weightConditions = z.strictObject({
  fuel: stated('volume').optional(),
  items: z.array(z.strictObject({ station: name, mass: stated('mass'), arm: stated('length').optional() })).default([]),
});
export type WeightConditions = z.output<typeof weightConditions>;
