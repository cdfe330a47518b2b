/** The plain number in a range of bytes, quickly and rightly rounded; NaN where the slow way must look. */

const POWERS = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);
const MOST_DIGITS = 15;

/**
 * A number such as `-12.34` from ASCII bytes. Up to 15 digits and 22 decimals: one exact division, correctly rounded.
 * @param bytes of the file
 * @param from first byte, count
 * @param to byte after the last, count
 * @param point the decimal mark's byte, count
 * @returns the number, or NaN for anything else
 */
export function parsePlainNumber(bytes: Uint8Array, from: number, to: number, point: number): number {
  let i = from;
  let end = to;
  while (i < end && (bytes[i] === 32 || bytes[i] === 9)) i++;
  while (end > i && (bytes[end - 1] === 32 || bytes[end - 1] === 9)) end--;
  if (i >= end) return Number.NaN;
  let negative = false;
  const sign = bytes[i];
  if (sign === 45 || sign === 43) {
    negative = sign === 45;
    i++;
  }
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; i < end; i++) {
    const byte = bytes[i] ?? 0;
    if (byte >= 48 && byte <= 57) {
      mantissa = mantissa * 10 + (byte - 48);
      digits++;
      if (decimals >= 0) decimals++;
    } else if (byte === point && decimals < 0) decimals = 0;
    else return Number.NaN;
  }
  if (digits === 0 || digits > MOST_DIGITS) return Number.NaN;
  const value = decimals > 0 ? mantissa / (POWERS[decimals] ?? Number.NaN) : mantissa;
  return negative ? -value : value;
}
