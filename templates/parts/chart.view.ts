/** A chart in a page: a figure that the browser module fills from its description, and the words for those who don’t see it. */
import * as z from 'zod';
import type { Chart } from '../charts/chart.ts';

export const chartPart = z.strictObject({
  title: z.string(),
  summary: z.string(),
  /** the description as JSON text, escaped by the template like any text */
  description: z.string(),
  low: z.boolean(),
});
export type ChartPart = z.infer<typeof chartPart>;

/** The part of a chart. */
export function chartInPage(chart: Chart): ChartPart {
  return {
    title: chart.title,
    summary: chart.summary,
    description: JSON.stringify(chart),
    low: chart.low ?? false,
  };
}
