/** A number as a person types it: decimal point or comma, spaces between thousands, a true minus sign. */

/**
 * Read a typed number.
 * @param text as typed
 * @returns the number, or null when it is not one
 */
export function typedNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(/^[−–]/, '-')
    .replace(/(?<=\d)[\s\u00a0\u202f’'](?=\d{3}(\D|$))/g, '')
    .replace(/^([+-]?\d*),(\d+)$/, '$1.$2');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : null;
}
