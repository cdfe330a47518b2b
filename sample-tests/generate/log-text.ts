/** Writes recorder files: columns of numbers with the step each is shown in, a clock, a few lines above the header. */
import { rounded } from './signals.ts';

export interface Column {
  header: string;
  /** rounding step of the recorder; absent: 1 */
  step?: number;
  /** in the unit of the header; NaN leaves the cell blank */
  values: ArrayLike<number>;
}

/** A recorder's local or UTC time as text; `millis` counts from 1970 on the recorder's own clock. */
export interface Stamp {
  headers: string[];
  text: (millis: number) => string;
}

/** Date and time of day in two columns, whole seconds, no zone. */
export const LOCAL_STAMP: Stamp = {
  headers: ['Date', 'Time'],
  text: (millis) => toSecond(millis).replace('T', ','),
};

/** One column, ISO 8601 UTC with tenths. */
export const UTC_STAMP: Stamp = {
  headers: ['UTC'],
  text: (millis) => `${toSecond(millis)}.${tenths(millis)}Z`,
};

const tenths = (millis: number): number => Math.floor((millis % 1000) / 100);
const toSecond = (millis: number): string => new Date(millis).toISOString().slice(0, 19);

/**
 * A recorder file.
 * @param preamble lines above the header
 * @param stamp how a row tells its time
 * @param millis time of each row on the recorder's own clock
 * @param columns the channels
 * @param rows which rows to write, in order; absent: all
 */
export function logText(
  preamble: readonly string[],
  stamp: Stamp,
  millis: ArrayLike<number>,
  columns: readonly Column[],
  rows?: readonly number[],
): string {
  const lines = [...preamble, [...stamp.headers, ...columns.map((column) => column.header)].join(',')];
  const count = rows ? rows.length : millis.length;
  for (let k = 0; k < count; k += 1) {
    const i = rows ? (rows[k] ?? 0) : k;
    let line = stamp.text(millis[i] ?? Number.NaN);
    for (const column of columns) {
      const value = column.values[i] ?? Number.NaN;
      line += Number.isNaN(value) ? ',' : `,${rounded(value, column.step ?? 1)}`;
    }
    lines.push(line);
  }
  return `${lines.join('\n')}\n`;
}
