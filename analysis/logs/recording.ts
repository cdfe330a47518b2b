/**
 * One or several aligned log tables as a reduction sees them: series by quantity on one clock, the first file's.
 */
import type { Flag } from '../remarks/index.ts';
import type { LogTable } from './table.ts';

/** One channel on the common clock; `t` seconds from the first record of the first file, `v` SI, NaN where missing. */
export interface Series {
  quantity: string;
  file: string;
  column: string;
  t: Float64Array;
  v: Float64Array;
  /** longest gap over which a value may be taken as held, s */
  holdSeconds: number;
  flags: Flag[];
}

export interface Recording {
  tables: LogTable[];
  /** seconds to add to each table's own time, same order as tables; 0 for the first */
  shifts: number[];
  /** seconds more to add for each second of a table's own time, same order; 0 where its clock keeps step */
  drifts: number[];
  series: Series[];
}

/**
 * A moment of one log on the common clock.
 * @param recording the aligned logs, object
 * @param table place of the log among the tables, count
 * @param seconds from the log's first record, s
 * @returns s from the first record of the first log
 */
export function onCommonClock({ shifts, drifts }: Recording, table: number, seconds: number): number {
  return seconds + (shifts[table] ?? 0) + (drifts[table] ?? 0) * seconds;
}

/**
 * A moment of the common clock on that of one log.
 * @param recording the aligned logs, object
 * @param table place of the log among the tables, count
 * @param seconds from the first record of the first log, s
 * @returns s from the log's own first record
 */
export function onOwnClock({ shifts, drifts }: Recording, table: number, seconds: number): number {
  return (seconds - (shifts[table] ?? 0)) / (1 + (drifts[table] ?? 0));
}

/**
 * A recording of aligned tables.
 * @param tables the logs, first one sets the clock, tables
 * @param shifts seconds added to each table's time, s; missing ones are 0
 * @param drifts seconds more for each second of its own time, number; missing ones are 0
 * @returns the recording, one series a known channel
 */
export function recordingOf(tables: LogTable[], shifts: number[] = [], drifts: number[] = []): Recording {
  const series: Series[] = [];
  const filled = tables.map((_, i) => shifts[i] ?? 0);
  const parting = tables.map((_, i) => drifts[i] ?? 0);
  tables.forEach((table, i) => {
    const shift = filled[i] ?? 0;
    const drift = parting[i] ?? 0;
    const isOwn = shift === 0 && drift === 0;
    const t = isOwn ? table.time.seconds : table.time.seconds.map((s) => s + shift + drift * s);
    const hold = table.time.sampleRateHz > 0 ? 2.5 / table.time.sampleRateHz : 0;
    for (const channel of table.channels) {
      if (channel.quantity === null) continue;
      series.push({
        quantity: channel.quantity,
        file: table.file,
        column: channel.column,
        t,
        // Of many channels few are asked for.
        get v() {
          return channel.values;
        },
        holdSeconds: hold,
        flags: channel.flags,
      });
    }
  });
  return { tables, shifts: filled, drifts: parting, series };
}

/**
 * The series of a quantity: the exact name first, then its first index, in the order of the files.
 * @param recording the aligned logs, object
 * @param quantity glossary name, text
 * @returns the series, or undefined
 */
export function seriesOf(recording: Recording, quantity: string): Series | undefined {
  return (
    recording.series.find((s) => s.quantity === quantity) ??
    recording.series.find((s) => s.quantity === `${quantity}#1`)
  );
}

/**
 * All series of a quantity, by index (`cylinder-head-temperature#1`, `#2`, ...).
 * @param recording the aligned logs, object
 * @param base glossary name without index, text
 * @returns the series, possibly none
 */
export function allSeriesOf(recording: Recording, base: string): Series[] {
  return recording.series.filter((s) => s.quantity === base || s.quantity.startsWith(`${base}#`));
}
