/** Numbers as people read them: in a trade unit, rounded to what the uncertainty supports, never without a unit. */
import { differenceFromSi, fromSi } from './convert.ts';
import { unitOf } from './find-unit.ts';

export interface Shown {
  /** number alone, with a true minus sign */
  number: string;
  /** unit symbol, may be empty for a pure number */
  unit: string;
  /** half-width alone, when there is one */
  half?: string;
  /** all of it: `98 ± 3 °C` */
  text: string;
}

/**
 * An SI value as text in a trade unit.
 * @param si value, SI
 * @param unit unit id, text
 * @param more u95 as a difference in SI decides the decimals; decimals overrides; text says where neither is given
 * @returns the parts and the whole
 * @throws UnknownUnit when the unit id is unknown
 * @source rounding to two significant digits of the uncertainty: [jcgm-100] 7.2.6
 */
export function show(si: number, unit: string, more: { u95?: number | null; decimals?: number } = {}): Shown {
  const symbol = unitOf(unit).symbol;
  const value = fromSi(si, unit);
  const half = more.u95 === undefined || more.u95 === null ? undefined : differenceFromSi(more.u95, unit);
  const decimals = more.decimals ?? (half === undefined ? decimalsFor(value) : decimalsOf(half));
  const number = plain(value, decimals);
  const space = symbol === '' || symbol === '°' ? '' : ' ';
  if (half === undefined) return { number, unit: symbol, text: `${number}${space}${symbol}` };
  const halfText = plain(half, decimals);
  return { number, unit: symbol, half: halfText, text: `${number} ± ${halfText}${space}${symbol}` };
}

/** Decimals that show a half-width with two significant digits, at most one where it is 3 or more of its first digit. */
export function decimalsOf(half: number): number {
  if (!Number.isFinite(half) || half <= 0) return 1;
  const order = Math.floor(Math.log10(half));
  const leading = half / 10 ** order;
  const digits = leading < 3 ? 2 : 1;
  return Math.min(6, Math.max(0, digits - 1 - order));
}

function decimalsFor(value: number): number {
  const size = Math.abs(value);
  if (Number.isInteger(Number(value.toPrecision(12)))) return 0;
  if (size >= 100) return 0;
  if (size >= 10) return 1;
  return size >= 1 ? 2 : 3;
}

function plain(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '—';
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}
