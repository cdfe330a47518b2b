/** What one written cell is: a number, a mark for "no reading", a date or time, or text. The slow and exact way. */

import { isUnitText } from '../channels/unit-text.ts';

export type Decimal = '.' | ',';

/** Words and signs that recorders write where there is no reading. Compared in lower case, trimmed. */
const MISSING = new Set([
  '', '-', '--', '---', '----', '-----', '–', '—', '_', '__', '.', '..', '...', '?', '??', '???', '*', '**', '***',
  '****', '*****', '#', '##', '###', '####', '#####', 'x', 'xx', 'xxx', 'na', 'n/a', 'n.a.', '#n/a', '#n/v', 'nan',
  '-nan', '+nan', '1.#qnan', '-1.#ind', 'inf', '-inf', '+inf', 'infinity', '-infinity', 'null', 'nil', 'none', 'void',
  'missing', 'blank', 'no data', 'nodata', 'invalid', 'inval', 'inop', 'fail', 'failed', 'fault', 'err', 'error',
  '#value!', '#ref!', '#div/0!', 'unknown', 'unk', 'absent', 'no fix', 'nofix', 'over', 'under', 'ovf',
  'undefined',
]); // biome-ignore format: a list

/** True where a cell says that there is no reading. */
export function isMissingMark(text: string): boolean {
  return MISSING.has(text.trim().toLowerCase());
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/;
const GROUPED: Record<string, RegExp> = {
  ',': /^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/,
  '.': /^[+-]?\d{1,3}(\.\d{3})+(\.\d*)?$/,
  ' ': /^[+-]?\d{1,3}([ \u00a0\u202f]\d{3})+(\.\d*)?$/,
  "'": /^[+-]?\d{1,3}(['’]\d{3})+(\.\d*)?$/,
};

/**
 * The number a cell shows.
 * @param text the cell as written, text
 * @param decimal decimal mark of the file, text
 * @returns the number, or NaN where the cell is anything else
 */
export function numberIn(text: string, decimal: Decimal): number {
  const value = shownNumber(text, decimal);
  // More figures than a number can hold are a fault.
  return Number.isFinite(value) ? value : Number.NaN;
}

function shownNumber(text: string, decimal: Decimal): number {
  let cell = text.trim();
  if (cell === '') return Number.NaN;
  if (cell.charCodeAt(0) === 0x2212) cell = `-${cell.slice(1)}`;
  if (decimal === ',') {
    if (PLAIN.test(cell) && !cell.includes('.')) return Number(cell);
    const pointed = cell.replace(',', '.');
    if (!cell.includes('.') && PLAIN.test(pointed)) return Number(pointed);
    // 1.234,5
    if (/^[+-]?\d{1,3}(\.\d{3})+(,\d*)?$/.test(cell)) return Number(cell.replaceAll('.', '').replace(',', '.'));
    if (/^[+-]?\d{1,3}([ \u00a0\u202f'’]\d{3})+(,\d*)?$/.test(cell)) {
      return Number(cell.replace(/[ \u00a0\u202f'’]/g, '').replace(',', '.'));
    }
    return Number.NaN;
  }
  if (PLAIN.test(cell)) return Number(cell);
  for (const mark of [',', ' ', "'"]) {
    if (GROUPED[mark]?.test(cell)) return Number(cell.replace(/[, \u00a0\u202f'’]/g, ''));
  }
  return Number.NaN;
}

/**
 * A latitude or longitude with its hemisphere, or in degrees and minutes: `N4512.345`, `45°12.345'N`, `12231.5W`.
 * @param text the cell as written, text
 * @returns degrees, north and east positive, or NaN where the cell is anything else
 */
export function degreesIn(text: string): number {
  const cell = text.trim().toUpperCase().replaceAll(',', '.');
  const hemisphere = /^[NSEW]|[NSEW]$/.exec(cell)?.[0];
  const hasMarks = /[°º]/.test(cell);
  if (!hemisphere && !hasMarks) return Number.NaN;
  const inner = cell
    .replace(/^[NSEW]\s*/, '')
    .replace(/\s*[NSEW]$/, '')
    .trim();
  const negative = inner.startsWith('-') || hemisphere === 'S' || hemisphere === 'W';
  const parts = inner
    .replace(/^[+-]/, '')
    .split(/[\s°º'’′"″:]+/)
    .filter((part) => part !== '');
  if (parts.length === 0 || parts.length > 3 || !parts.every((part) => /^\d+(\.\d*)?$/.test(part))) return Number.NaN;
  const [first = '', second, third] = parts;
  let degrees: number;
  if (second === undefined) {
    const whole = first.split('.')[0] ?? '';
    // ddmm.mmm and dddmm.mmm have four or five digits before the point; plain degrees have three at most.
    degrees = whole.length >= 4 ? fromDegreesMinutes(Number(first)) : Number(first);
  } else {
    const minutes = Number(second);
    const seconds = Number(third ?? 0);
    if (minutes >= 60 || seconds >= 60) return Number.NaN;
    degrees = Number(first) + minutes / 60 + seconds / 3600;
  }
  if (!(degrees <= 180)) return Number.NaN;
  return negative ? -degrees : degrees;
}

/**
 * Degrees from the `dddmm.mmm` that satellite receivers write.
 * @param packed degrees times 100 plus minutes, number
 * @returns degrees, or NaN where the minutes are 60 or more
 */
export function fromDegreesMinutes(packed: number): number {
  const size = Math.abs(packed);
  const degrees = Math.floor(size / 100);
  const minutes = size - degrees * 100;
  return minutes >= 60 ? Number.NaN : Math.sign(packed || 1) * (degrees + minutes / 60);
}

/**
 * A number with its unit behind it: `98.5 C`, `2400rpm`, `45%`.
 * @param text the cell as written, text
 * @returns number and unit as written, or null where the cell is no such thing
 */
export function splitUnit(text: string): { number: string; unit: string } | null {
  const m = /^([+-]?[\d.,]*\d[.,]?)\s*([^\d\s.,+-].*)$/.exec(text.trim());
  // Four decimals and a letter of the compass are a position; nothing on board is weighed to a tenth of a millinewton.
  if (m?.[1] !== undefined && /[.,]\d{4,}$/.test(m[1]) && /^[NSEW]$/i.test(m[2] ?? '')) return null;
  return m?.[1] !== undefined && m[2] !== undefined && isUnitText(m[2]) ? { number: m[1], unit: m[2] } : null;
}

const STATES: Readonly<Record<string, number>> = {
  on: 1, off: 0, open: 1, closed: 0, close: 0, shut: 0, up: 0, down: 1, dn: 1, yes: 1, no: 0, true: 1, false: 0, t: 1,
  f: 0, y: 1, n: 0, active: 1, inactive: 0, high: 1, low: 0, running: 1, stopped: 0, made: 1, ein: 1, aus: 0, an: 1,
}; // biome-ignore format: a list

/**
 * The state a cell names.
 * @param text the cell as written, text
 * @returns 0 or 1, or NaN where the cell is no such word
 */
export function stateIn(text: string): number {
  const word = text.trim().toLowerCase();
  return Object.hasOwn(STATES, word) ? (STATES[word] ?? Number.NaN) : Number.NaN;
}
