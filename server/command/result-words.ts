/** A result or prediction as lines of text: each number with unit, uncertainty and what it holds for. */
import * as z from 'zod';
import type { Prediction } from '../../analysis/reductions/index.ts';
import { conditionSchema, type Result } from '../../analysis/results/index.ts';
import { conditionsInWords, quantityInWords, quantityText, whyNone } from '../../templates/words/quantity.ts';
import { type InstrumentUnits, USUAL_UNITS } from '../../templates/words/unit-shown.ts';

const conditionsSchema = z.record(z.string(), conditionSchema);

/** @param units as the airplane's instruments have them */
export function resultWords(result: Result, units: InstrumentUnits = USUAL_UNITS): string[] {
  const { kind, status, quantities, comparisons, flags } = result;
  return [
    `${kind}: ${status}`,
    ...quantities.flatMap((one) => {
      const more = { name: one.name, u95: one.u95, why: whyNone(one) };
      const value = quantityText(quantityInWords(one.value, one.unit, more, units));
      return [`${one.name}: ${value}`, ...holdsFor(one.conditions, units)];
    }),
    ...comparisons.map(
      (one) => `${one.what}: ${one.words}${one.reference ? ' (a yardstick, not a requirement on this airplane)' : ''}`,
    ),
    ...flags.map((one) => `${one.kind}: ${one.message}`),
  ];
}

/** @param units as the airplane's instruments have them */
export function predictionWords({ quantities, flags }: Prediction, units: InstrumentUnits = USUAL_UNITS): string[] {
  return [
    ...quantities.flatMap(({ name, value, low, high, unit, conditions, why }) => {
      const text = (si: number | null) => quantityText(quantityInWords(si, unit, { name, why: 'open' }, units));
      const known = conditionsSchema.safeParse(conditions).data ?? {};
      return [`${name}: ${text(value)} (${text(low)} to ${text(high)}): ${why}`, ...holdsFor(known, units)];
    }),
    ...flags.map((one) => `${one.kind}: ${one.message}`),
  ];
}

function holdsFor(conditions: Result['quantities'][number]['conditions'], units: InstrumentUnits): string[] {
  const parts = conditionsInWords(conditions, units).map((one) => `${one.name} ${one.text}`);
  return parts.length > 0 ? [`  for ${parts.join(', ')}`] : [];
}
