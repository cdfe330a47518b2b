/** A table as every page shows it: caption, heads with units, cells as ready text, a way to the samples, a CSV. */
import * as z from 'zod';

export const cellPart = z.strictObject({
  text: z.string(),
  number: z.boolean(),
  heading: z.boolean(),
  href: z.string(),
});

export const tablePart = z.strictObject({
  caption: z.string(),
  columns: z.array(z.strictObject({ name: z.string(), unit: z.string(), number: z.boolean() })),
  rows: z.array(z.strictObject({ cells: z.array(cellPart), aside: z.boolean() })),
  /** where the same numbers can be had as CSV, or empty */
  csv: z.string(),
  /** said instead of the table when it has no rows */
  empty: z.string(),
});
export type TablePart = z.infer<typeof tablePart>;
export type CellPart = z.infer<typeof cellPart>;

/** One cell; text unless said otherwise. */
export function cell(text: string, more: { number?: boolean; heading?: boolean; href?: string } = {}): CellPart {
  return { text, number: more.number ?? false, heading: more.heading ?? false, href: more.href ?? '' };
}
