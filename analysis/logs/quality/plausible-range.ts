/** The glossary's plausible range as values of a file may show it. */
import type { Quantity } from '../../units/index.ts';

/**
 * @param quantity glossary entry, object
 * @returns lowest and highest plausible value, SI; a longitude may be counted east all the way round
 */
export function plausibleRange(quantity: Quantity): readonly [number, number] {
  return quantity.name === 'longitude' ? [-2 * Math.PI, 2 * Math.PI] : quantity.plausible;
}
