/** A reading as it is typed, against what can be and what was predicted. A warning, never a bar: the card is what was seen. */
import type { Expectation, Write } from './card.ts';

export interface Doubt {
  kind: 'unreadable' | 'implausible' | 'above' | 'below';
  words: string;
}

/** What is known of a box. */
export interface AboutBox {
  input: Write;
  unit: string;
  plausible: readonly [number, number] | null;
  expect: Expectation | null;
}

const CLOCK = /^([01]?\d|2[0-3])[:.]?[0-5]\d$/;

/**
 * What is doubtful about a reading.
 * @param box what is known of its box, object
 * @param text as typed, text
 * @param value its number in the unit of the box, or null where it is none
 * @returns the doubt, or null where there is none or nothing was typed
 */
export function doubtReading(box: AboutBox, text: string, value: number | null): Doubt | null {
  if (text.trim() === '') return null;
  if (box.input === 'clock')
    return CLOCK.test(text.trim()) ? null : { kind: 'unreadable', words: 'not a time of day such as 14:05' };
  if (box.input !== 'number') return null;
  if (value === null) return { kind: 'unreadable', words: 'not a number' };
  const { plausible, expect, unit } = box;
  if (plausible && (value < plausible[0] || value > plausible[1])) {
    const [low, high] = plausible.map((end) => Math.round(end));
    return { kind: 'implausible', words: `outside ${low} to ${high} ${unit}: slip or wrong unit?`.replace('  ', ' ') };
  }
  if (expect?.high !== null && expect && value > expect.high) return { kind: 'above', words: `above ${expect.text}` };
  if (expect?.low !== null && expect && value < expect.low) return { kind: 'below', words: `below ${expect.text}` };
  return null;
}

/**
 * A time of day as it is kept: `1405` and `14.05` as `14:05`.
 * @param text as typed, text
 * @returns with a colon where it is a time of day, else as it came
 */
export function clockText(text: string): string {
  const plain = text.trim();
  return CLOCK.test(plain) ? plain.replace(/[:.]/, '').replace(/^(\d{1,2})(\d\d)$/, '$1:$2') : plain;
}

/** Shapes that stand for a doubt, so that it is never told by colour alone. */
export const DOUBT_MARKS: Readonly<Record<Doubt['kind'], string>> = {
  unreadable: '✕',
  implausible: '◇',
  above: '▲',
  below: '▼',
};
