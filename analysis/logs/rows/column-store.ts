/** One column while a file is read: numbers in a growing array, or texts, and what did not fit. */
import { type Decimal, degreesIn, fromDegreesMinutes, isMissingMark, numberIn, stateIn } from '../text/cell.ts';

export type ColumnKind = 'number' | 'text';

/** Cells that were neither a number nor a mark for none: a few kept, all counted. */
export interface Odd {
  count: number;
  firstRow: number;
  lastRow: number;
  example: string;
}

const MISSING = Number.NaN;
const TEXTS_KEPT = 4096;

export class ColumnStore {
  readonly kind: ColumnKind;
  numbers: Float64Array;
  texts: string[] | null;
  length = 0;
  odd: Odd = { count: 0, firstRow: -1, lastRow: -1, example: '' };
  formulas = 0;
  readonly #decimal: Decimal;
  readonly #seen = new Map<string, string>();
  readonly #read = new Map<string, number>();

  constructor(kind: ColumnKind, decimal: Decimal, capacity: number) {
    this.kind = kind;
    this.#decimal = decimal;
    this.numbers = kind === 'number' ? new Float64Array(capacity) : new Float64Array(0);
    this.texts = kind === 'text' ? [] : null;
  }

  pushNumber(value: number): void {
    if (this.length === this.numbers.length) this.#grow();
    this.numbers[this.length] = value;
    this.length += 1;
  }

  pushMissing(): void {
    if (this.texts) {
      this.texts.push('');
      this.length += 1;
    } else this.pushNumber(MISSING);
  }

  pushText(cell: string): void {
    const text = cell.trim();
    if (/^[=@]|^[+-][A-Za-z(]/.test(text)) this.formulas += 1;
    if (this.texts) {
      // Dates and states repeat: one string each, not one a row.
      let kept = this.#seen.get(text);
      if (kept === undefined) {
        kept = text;
        if (this.#seen.size < TEXTS_KEPT) this.#seen.set(text, text);
      }
      this.texts.push(kept);
      this.length += 1;
      return;
    }
    this.pushNumber(this.#valueOf(text));
  }

  #valueOf(text: string): number {
    const known = this.#read.get(text);
    if (known !== undefined && !Number.isNaN(known)) return known;
    let value = numberIn(text, this.#decimal);
    if (Number.isNaN(value) && !isMissingMark(text)) {
      value = degreesIn(text);
      if (Number.isNaN(value)) value = stateIn(text);
      if (Number.isNaN(value)) this.#note(text);
    }
    if (this.#read.size < TEXTS_KEPT) this.#read.set(text, value);
    return value;
  }

  #note(text: string): void {
    if (this.odd.count === 0) {
      this.odd.firstRow = this.length;
      this.odd.example = text.slice(0, 40);
    }
    this.odd.lastRow = this.length;
    this.odd.count += 1;
  }

  #grow(): void {
    const wider = new Float64Array(Math.max(1024, this.numbers.length * 2));
    wider.set(this.numbers);
    this.numbers = wider;
  }

  finish(): void {
    if (this.kind === 'number') this.numbers = this.numbers.subarray(0, this.length);
  }
}

/**
 * Numbers of a latitude or longitude written as degrees and minutes packed in one (`4512.345`).
 * @param values as written
 * @param most the largest size degrees may have, 90 or 180
 * @returns degrees, or null where the values are degrees already
 */
export function unpackDegrees(values: Float64Array, most: number): Float64Array | null {
  let large = 0;
  let there = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    there += 1;
    if (Math.abs(value) > most) large += 1;
  }
  return there > 0 && large > 0.9 * there ? values.map(fromDegreesMinutes) : null;
}
