/** What reading one file gives: whether it can be used, what must be asked, and the columnar table. */
import type { Flag, Problem } from '../remarks/index.ts';
import type { LogMap } from './log-map.ts';
import type { LogTable, TimeSegment } from './table.ts';

/** Something that must not be guessed. A map answers it. */
export interface ReadQuestion {
  id: string;
  question: string;
  choices: string[];
  because: string;
  /** the column it is about, where it is about one */
  column?: string;
  /** quantities that depend on the answer; `date`, `time` or `all` where it is not a channel */
  concerns: string[];
}

export interface RejectedRow {
  /** line of the file, from 1 */
  line: number;
  reason: string;
}

/** How the text of the file is built. */
export interface Dialect {
  encoding: string | null;
  /** `,` `;` tab `|`, `spaces` or `fixed` */
  delimiter: string | null;
  decimal: '.' | ',' | null;
  /** from 1; null when the file has none */
  headerLine: number | null;
  unitsLine: number | null;
  preamble: string[];
}

/** The time base as reported; the table holds the seconds themselves. */
export interface TimeReading {
  start: string | null;
  zone: string;
  durationSeconds: number;
  sampleRateHz: number;
  segments: TimeSegment[];
}

export interface ReadOutcome {
  file: string;
  sha256: string;
  accepted: 'yes' | 'no' | 'ask';
  problems: Problem[];
  questions: ReadQuestion[];
  dialect: Dialect;
  /** rows in the table */
  rows: number;
  /** the first thousand; `rowsRejectedCount` counts all */
  rowsRejected: RejectedRow[];
  rowsRejectedCount: number;
  time: TimeReading;
  /** first record by the file's own clock, where its zone is not known: date and time, or time of day */
  clockStart?: string;
  /** what was done to the clock, in words */
  timeNotes: string[];
  /** remarks on the file; those on channels stand with them in the table */
  flags: Flag[];
  /** first lines of the file as text, for showing beside the reading */
  firstLines: string[];
  /** null when the file cannot be used */
  table: LogTable | null;
}

export interface ReadOptions {
  /** name as given; only its plain part is shown */
  file: string;
  sha256: string;
  map?: LogMap;
  /** for a file that carries no time at all, 1/s */
  sampleRateHz?: number;
  /** size where it is known beforehand, bytes; lets the columns be made in one piece */
  sizeBytes?: number;
  /** send every piece through papaparse, so that the fast way can be held against it */
  exact?: boolean;
}
