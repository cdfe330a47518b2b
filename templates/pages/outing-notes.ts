/** What came of an outing, in words. */
import { momentInWords } from '../words/time.ts';
import type { KeptNote } from './kept.ts';

export const NOTES = [
  { value: 'done', text: 'flown or done' },
  { value: 'no-go', text: 'a no-go: it waits for something' },
  { value: 'day-lost', text: 'not begun: the day was lost' },
];

const SAID: Record<string, string> = {
  done: 'Flown or done',
  'no-go': 'No-go',
  'day-lost': 'Day lost',
};

/** A note as one line. */
export function noteInWords({ what, at, who, note, outing }: KeptNote, zone: string): string {
  const by = who === '' ? '' : `, ${who}`;
  const rest = note === '' ? '' : ` ${note}`;
  return `${SAID[what] ?? what}, ${momentInWords(at, zone).local}${by}: ${outing}.${rest}`;
}
