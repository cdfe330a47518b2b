/** The one number a result is known by in a list: what is compared with a limit first, else the first value found. */
import type { Result } from '../../analysis/results/index.ts';
import { nameInWords } from '../words/list.ts';
import { type QuantityPart, quantityInWords } from '../words/quantity.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';

export interface Headline {
  label: string;
  quantity: QuantityPart;
  /** outcome word of the comparison, or empty */
  outcome: string;
}

/**
 * The headline of a result.
 * @param result as kept
 * @param units the airplane's instrument units, object
 * @param href where the number leads, text
 */
export function headlineOf(result: Result, units: InstrumentUnits, href: string): Headline {
  if (result.status === 'refused') {
    return {
      label: 'Refused',
      quantity: { number: result.reason ?? 'refused', half: '', unit: '', none: true, href, title: '' },
      outcome: 'refused',
    };
  }
  const [comparison] = result.comparisons;
  if (comparison) {
    const { what, value, unit, u95, outcome } = comparison;
    return { label: what, quantity: quantityInWords(value, unit, { name: what, u95, href }, units), outcome };
  }
  const first = result.quantities.find((one) => one.value !== null) ?? result.quantities[0];
  if (!first)
    return { label: '', quantity: quantityInWords(null, '1', { name: '', why: 'no value' }, units), outcome: '' };
  const { name, value, unit, u95 } = first;
  return { label: nameInWords(name), quantity: quantityInWords(value, unit, { name, u95, href }, units), outcome: '' };
}
