/** Numerals as cards print them: plain digits, a comma from five digits on, a true minus sign. */

/**
 * A number as entered, without rounding noise.
 * @param value number in the unit it is printed in
 * @returns its digits
 */
export function plainNumber(value: number): string {
  const text = String(Number(value.toPrecision(10)));
  const [whole = '', fraction] = text.replace('-', '').split('.');
  const grouped = whole.length >= 5 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return `${value < 0 ? '−' : ''}${grouped}${fraction ? `.${fraction}` : ''}`;
}

/**
 * A converted number, rounded to its careful side.
 * @param value number in the unit it is printed in
 * @param decimals decimals kept, 0 or more
 * @param side 'upper' rounds down (a limit not to pass), 'lower' rounds up, 'nearest' otherwise
 * @returns its digits
 */
export function roundedTo(value: number, decimals: number, side: 'upper' | 'lower' | 'nearest'): string {
  const step = 10 ** decimals;
  const scaled = Number((value * step).toPrecision(12));
  const whole = side === 'upper' ? Math.floor(scaled) : side === 'lower' ? Math.ceil(scaled) : Math.round(scaled);
  const text = (whole / step).toFixed(decimals);
  return decimals === 0 ? plainNumber(whole) : text.replace('-', '−');
}

/**
 * A general figure converted into another unit: two significant digits, one below 1, heights upwards.
 * @param value number in the unit it is printed in
 * @param up true where it is a least value
 * @returns its digits
 */
export function roughNumber(value: number, up = false): string {
  if (value === 0) return '0';
  const order = Math.floor(Math.log10(Math.abs(value)));
  if (order < 0) return plainNumber(Number(value.toPrecision(1)));
  const step = 10 ** (order - 1);
  const whole = Number((value / step).toPrecision(12));
  return plainNumber((up ? Math.ceil(whole) : Math.round(whole)) * step);
}
