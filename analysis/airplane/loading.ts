/** Weight and balance as the builder enters it: empty airplane, stations, envelope. Arms aft of the datum positive. */
import * as z from 'zod';
import { stated } from './stated.ts';

export const stationSchema = z.strictObject({
  name: z.string().min(1),
  arm: stated('length'),
  /** most that may be loaded here */
  maximum: stated('mass').optional(),
  kind: z.enum(['seat', 'baggage', 'ballast', 'other']).default('other'),
});

export const loadingSchema = z.strictObject({
  datum: z.string().default(''),
  empty: z.strictObject({ mass: stated('mass'), arm: stated('length'), weighedOn: z.string().optional() }).optional(),
  mac: z.strictObject({ length: stated('length'), leadingEdge: stated('length') }).optional(),
  stations: z.array(stationSchema).default([]),
  /** corners of the allowed envelope, in order round it */
  envelope: z.array(z.strictObject({ mass: stated('mass'), arm: stated('length') })).default([]),
  pilotMass: stated('mass').optional(),
});
