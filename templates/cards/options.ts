/** What the person chooses for paper: type size, writing hand, night version, blank backs. */
import * as z from 'zod';
import { PAPERS, TYPES } from '../../analysis/cards/sheet-size.ts';

export const paperSchema = z.enum(PAPERS);

export const printOptionsSchema = z.strictObject({
  type: z.enum(TYPES).default('normal'),
  /** the hand that writes: the binding strip is on the other side, what is written on is on this one */
  hand: z.enum(['right', 'left']).default('right'),
  /** heavier strokes, nothing fine */
  night: z.boolean().default(false),
  /** a back for notes behind every sheet, for printing on both sides */
  backs: z.boolean().default(false),
});

export type PrintOptions = z.output<typeof printOptionsSchema>;

export const USUAL_OPTIONS: PrintOptions = printOptionsSchema.parse({});
