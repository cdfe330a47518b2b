/**
 * The columnar log table: one recorder file after reading. Values are SI where the quantity and unit are known, else
 * as written. A reading never interpolates: a missing cell is NaN.
 */
import type { Flag } from '../remarks/index.ts';
import type { WrittenNumbers } from './lazy-channel.ts';

export interface LogChannel {
  /** header text as told apart in the file (`Header`, `Header#2`) */
  column: string;
  /** index of the column in the file, from 0 */
  index: number;
  /** header text without its unit */
  name: string;
  /** glossary name with index where there are several, or null when unknown or ignored */
  quantity: string | null;
  /** unit id as in the file, or null when not known */
  unit: string | null;
  /** 0..1 */
  confidence: number;
  why: string;
  /** one value a row; SI when quantity and unit are known; NaN where missing */
  values: Float64Array;
  /** the same as written, until `values` is first asked for; never in a channel made by hand */
  written?: WrittenNumbers;
  /** text of a non-numeric column, one a row; absent for numeric channels */
  texts?: readonly string[];
  /** share of rows with a number, 0..1 */
  valid: number;
  flags: Flag[];
}

export interface TimeSegment {
  fromSeconds: number;
  toSeconds: number;
  reason: string;
}

export interface TimeBase {
  /** seconds from the first record, never falling, one a row */
  seconds: Float64Array;
  /** milliseconds since 1970 UTC of second 0, where date and zone are known */
  startUtcMs: number | null;
  /** ISO 8601 with offset, or null */
  start: string | null;
  zone: string;
  durationSeconds: number;
  sampleRateHz: number;
  segments: TimeSegment[];
}

export interface LogTable {
  file: string;
  sha256: string;
  rows: number;
  time: TimeBase;
  channels: LogChannel[];
  /** remarks on the file as a whole */
  flags: Flag[];
}

/**
 * The channel of a quantity in one table.
 * @param table the log, table
 * @param quantity glossary name, with or without index, text
 * @returns the channel with the highest confidence, or undefined
 */
export function channelOf(table: LogTable, quantity: string): LogChannel | undefined {
  let best: LogChannel | undefined;
  for (const channel of table.channels) {
    if (channel.quantity !== quantity && channel.quantity !== `${quantity}#1`) continue;
    if (!best || channel.confidence > best.confidence) best = channel;
  }
  return best;
}
