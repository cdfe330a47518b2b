/** The one number a result is known by: the comparison that comes out worst, else the first value found. */
import type { Comparison, Result } from '../../analysis/results/index.ts';
import { nameInWords } from '../words/list.ts';
import { type QuantityPart, quantityInWords } from '../words/quantity.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import { toldApart } from './told-apart.ts';

export interface Headline {
  label: string;
  quantity: QuantityPart;
  comparison: Comparison | null;
}

/** What a person must see first: beyond a limit, then what was not shown although there is a value. */
function weight({ outcome, value }: Comparison): number {
  if (outcome === 'exceeded') return 0;
  if (value === null) return 3;
  return outcome === 'not shown' ? 1 : 2;
}

/** Comparisons with the one that comes out worst first; of equals the one nearest to its limit. */
export function worstFirst(comparisons: readonly Comparison[]): Comparison[] {
  const room = (one: Comparison) => (one.value === null ? 0 : one.limit - one.value);
  return [...comparisons].sort((a, b) => weight(a) - weight(b) || room(a) - room(b));
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
      label: '',
      quantity: { number: result.reason ?? 'refused', half: '', unit: '', none: true, href, title: '' },
      comparison: null,
    };
  }
  const [comparison] = worstFirst(result.comparisons.filter((one) => !one.reference));
  if (comparison) {
    const { what, value, unit, u95 } = comparison;
    return { label: what, quantity: quantityInWords(value, unit, { name: what, u95, href }, units), comparison };
  }
  const first = result.quantities.find((one) => one.value !== null) ?? result.quantities[0];
  if (!first) {
    return { label: '', quantity: quantityInWords(null, '1', { name: '', why: 'no value' }, units), comparison: null };
  }
  const { name, value, unit, u95 } = first;
  const alike = result.quantities.filter((one) => one.name === name);
  const { which, name: by, at } = toldApart(alike, units)[alike.indexOf(first)] ?? { which: '', name: '', at: '' };
  return {
    label: [nameInWords(name), which, at && `${by} ${at}`].filter(Boolean).join(', '),
    quantity: quantityInWords(value, unit, { name, u95, href }, units),
    comparison: null,
  };
}
