/** Comparisons of a result in words: with limits of this airplane, and beside rules that do not bind it. */
import * as z from 'zod';
import type { Comparison, Result } from '../../analysis/results/index.ts';
import { intervalOf, intervalPart } from '../parts/interval.view.ts';
import { sentence } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { quantityInWords, quantityPart, quantityText } from '../words/quantity.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import { worstFirst } from './result-headline.ts';

export const comparisonRow = z.strictObject({
  what: z.string(),
  quantity: quantityPart,
  limit: z.string(),
  interval: intervalPart.nullable(),
  outcome: outcomePart,
  words: z.string(),
});
/** A table of comparisons, and what it is called. */
export const comparisonsPart = z.strictObject({ label: z.string(), rows: z.array(comparisonRow) });
/** Yardsticks, and how many came out how. */
export const yardsticksPart = comparisonsPart.extend({ tally: z.string() });
export type ComparisonRow = z.infer<typeof comparisonRow>;

/** A comparison as a row. */
export function comparisonInRow(one: Comparison, units: InstrumentUnits): ComparisonRow {
  const { what, value, unit, u95, limit, outcome, words } = one;
  return {
    what: sentence(what),
    quantity: quantityInWords(value, unit, { name: what, u95, why: 'no value' }, units),
    limit: quantityText(quantityInWords(limit, unit, { name: what }, units)),
    interval: intervalOf(one),
    outcome: outcomeInWords(outcome),
    words: sentence(words),
  };
}

/** `7 shown, 9 not shown, 1 exceeded`. */
export function comparisonsInWords(comparisons: readonly Comparison[]): string {
  const words = (['exceeded', 'not shown', 'shown'] as const).map((outcome) => {
    const n = comparisons.filter((one) => one.outcome === outcome).length;
    return n === 0 ? '' : `${n} ${outcome}`;
  });
  return words.filter(Boolean).join(', ');
}

/** Comparisons with limits of this airplane, worst first; null where there are none. */
export function againstLimits({ comparisons }: Result, units: InstrumentUnits): z.infer<typeof comparisonsPart> | null {
  const binding = comparisons.filter((one) => !one.reference);
  if (binding.length === 0) return null;
  return { label: 'Against the limits', rows: worstFirst(binding).map((one) => comparisonInRow(one, units)) };
}

/** Comparisons beside rules that do not bind it, in their order; null where there are none. */
export function besideRules({ comparisons }: Result, units: InstrumentUnits): z.infer<typeof yardsticksPart> | null {
  const yardsticks = comparisons.filter((one) => one.reference);
  if (yardsticks.length === 0) return null;
  return {
    label: 'Beside published rules',
    rows: yardsticks.map((one) => comparisonInRow(one, units)),
    tally: comparisonsInWords(yardsticks),
  };
}
