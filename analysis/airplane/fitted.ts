/** Things an airplane has several of: tanks, batteries, runways at its field, recorders. */
import * as z from 'zod';
import { stated } from './stated.ts';

export const tankSchema = z.strictObject({
  name: z.string().min(1),
  capacity: stated('volume'),
  usable: stated('volume').optional(),
  arm: stated('length').optional(),
  /** tank it is pumped into, where it does not feed the engine itself */
  transfersTo: z.string().optional(),
});

export const batterySchema = z.strictObject({
  name: z.string().min(1),
  capacity: stated('charge'),
  chemistry: z.enum(['lead-acid', 'lithium']).default('lead-acid'),
  separateContactor: z.boolean().default(false),
});

export const alternatorSchema = z.strictObject({ rating: stated('current'), voltage: stated('voltage').optional() });

export const runwaySchema = z.strictObject({
  name: z.string().min(1),
  length: stated('length'),
  width: stated('length').optional(),
  surface: z.enum(['paved', 'grass', 'other']).default('paved'),
  /** uphill positive in the direction of the first number */
  slope: stated('ratio').optional(),
});

export const recorderSchema = z.strictObject({
  name: z.string().min(1),
  rate: stated('frequency').optional(),
  clock: z.string().default(''),
  channels: z.array(z.string()).default([]),
});
