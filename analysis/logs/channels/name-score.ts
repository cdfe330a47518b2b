/** Whether a text looks like the name of a column: used to find the header line among others. */
import { isTimeName } from '../clock/time-names.ts';
import { nameWords } from './name-words.ts';

/**
 * How much a text looks like a column name.
 * @param name a header cell without its unit, text
 * @returns 1 when it is known, 0.5 when part of it is, 0 when nothing of it is
 */
export function nameScore(name: string): number {
  const text = name.trim();
  if (text === '') return 0;
  if (isTimeName(text)) return 1;
  const read = nameWords(text);
  const known = read.words.filter((word) => word !== 'NEUTRAL').length;
  if (known === 0) return 0;
  return read.unknown.length === 0 ? 1 : 0.5;
}
