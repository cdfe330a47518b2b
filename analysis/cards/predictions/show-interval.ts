/** A predicted value with its band in an instrument's unit, as a card prints it in a line. */
import { decimalsOf, differenceFromSi, show } from '../../units/index.ts';

/**
 * A value with its half-width.
 * @param one value and ends, SI, and their unit id; ends null where there is no band
 * @param unit unit id it is shown in, text
 * @returns the number alone, its half-width (empty where there is no band), and the whole text with band and unit
 */
export function showInterval(
  one: { value: number | null; low: number | null; high: number | null; unit: string },
  unit: string,
): { number: string; half: string; text: string } {
  const { value, low, high } = one;
  if (value === null) return { number: '?', half: '', text: '?' };
  if (low === null || high === null) {
    const shown = show(value, unit, { decimals: 0 });
    return { number: shown.number, half: '', text: shown.text };
  }
  const half = (high - low) / 2;
  const decimals = differenceFromSi(half, unit) >= 1 ? 0 : Math.min(1, decimalsOf(differenceFromSi(half, unit)));
  const shown = show(value, unit, { decimals, u95: half });
  return { number: shown.number, half: shown.half ?? '', text: shown.text };
}
