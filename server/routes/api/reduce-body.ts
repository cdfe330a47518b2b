/** What a reduction is asked for with. */
import * as z from 'zod';
import { segmentEditSchema } from '../../../analysis/segments/index.ts';
import { bySchema } from './api.ts';

export const reduceBody = bySchema.extend({
  kind: z.string(),
  logs: z.array(z.string()).max(8).default([]),
  points: z.unknown().optional(),
  segments: z.array(segmentEditSchema).optional(),
  options: z.record(z.string(), z.unknown()).optional(),
  calibration: z.int().nullable().optional(),
  shifts: z.record(z.string(), z.number()).optional(),
  tests: z.array(z.string()).optional(),
});
