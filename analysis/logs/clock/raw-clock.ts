/** What the file's own clock says, row by row, before anything is repaired. */
import type { Flag } from '../../remarks/index.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { Stamps } from './read-stamps.ts';

/** One column that may tell time. */
export interface TimeColumn {
  column: string;
  index: number;
  name: string;
  unitText: string;
  /** cells that are not plain numbers, one a row */
  texts: readonly string[] | null;
  /** cells that are, one a row */
  numbers: Float64Array | null;
  /** the cells as dates and times, where the reader of rows took them so */
  stamps?: Stamps | null;
  /** one of those cells as written, or empty */
  example?: string;
}

export interface RawClock {
  /** `absolute`: date and time; `day`: time of day alone; `elapsed`: since some start */
  kind: 'absolute' | 'day' | 'elapsed';
  /** s, one a row, NaN where missing; absolute: since 1970 in UTC, or in the file's unknown zone */
  raw: Float64Array;
  /** minutes east of UTC of the zone shown; NaN when unknown */
  offsetMinutes: number;
  /** a wall clock: days change at midnight */
  wall: boolean;
  used: number[];
  notes: string[];
  flags: Flag[];
  questions: ReadQuestion[];
}

export const DAY_SECONDS = 86_400;

/**
 * A clock without remarks.
 * @param kind what the seconds count from
 * @param raw seconds, one a row
 * @param used column indices it was made of
 * @param note what was read, text
 * @returns the clock, zone unknown
 */
export function rawClock(kind: RawClock['kind'], raw: Float64Array, used: number[], note: string): RawClock {
  return {
    kind,
    raw,
    offsetMinutes: Number.NaN,
    wall: kind !== 'elapsed',
    used,
    notes: [note],
    flags: [],
    questions: [],
  };
}
