/** A value with its interval beside the limit, drawn small: how much room is left, and how sure that is. */
import * as z from 'zod';
import type { Comparison } from '../../analysis/results/index.ts';

export const intervalPart = z.strictObject({
  from: z.string(),
  to: z.string(),
  at: z.string(),
  limit: z.string(),
});
export type IntervalPart = z.infer<typeof intervalPart>;

/** Width of the drawing, and what stays free at its ends. */
const WIDTH = 200;
const MARGIN = 12;

/** The drawing of a comparison, or null where there is no interval. */
export function intervalOf({ value, u95, limit }: Comparison): IntervalPart | null {
  if (value === null || u95 === null || !(u95 > 0)) return null;
  const low = Math.min(value - u95, limit);
  const high = Math.max(value + u95, limit);
  const place = (one: number) => (MARGIN + ((one - low) / (high - low)) * (WIDTH - 2 * MARGIN)).toFixed(1);
  return { from: place(value - u95), to: place(value + u95), at: place(value), limit: place(limit) };
}
