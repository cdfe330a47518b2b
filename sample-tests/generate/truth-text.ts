/** Writes a truth file: every number with its SI unit, so that a reader needs no other document. */

/** SI unit of each key that holds a number; 'none' for a plain count. */
export type Units = Readonly<Record<string, string>>;

type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

/**
 * Truth as JSON text: each number becomes { value, unit }, rounded to seven digits so that the text
 * does not depend on the last bits of a processor's arithmetic.
 * @param truth plain objects, arrays, numbers, texts
 * @param units SI unit by key
 */
export function truthText(truth: unknown, units: Units): string {
  return `${JSON.stringify(withUnits(truth, units), null, 1)}\n`;
}

function withUnits(value: unknown, units: Units, key = ''): Plain {
  if (typeof value === 'number') {
    const number = Number(value.toPrecision(7));
    const unit = units[key];
    if (unit === undefined) throw new TypeError(`truth holds a number "${key}" without a unit`);
    return unit === 'none' ? number : { value: number, unit };
  }
  if (Array.isArray(value)) return value.map((one) => withUnits(one, units, key));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, withUnits(inner, units, name)]));
  if (typeof value === 'string' || typeof value === 'boolean' || value === null) return value;
  throw new TypeError(`truth holds a ${typeof value} under "${key}"`);
}
