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
  series: Series[];
}

/**
 * A recording of aligned tables.
 * @param tables the logs, first one sets the clock, tables
 * @param shifts seconds added to each table's time, s; missing ones are 0
 * @returns the recording, one series a known channel
 */
export function recordingOf(tables: LogTable[], shifts: number[] = []): Recording {
  const series: Series[] = [];
  const filled = tables.map((_, i) => shifts[i] ?? 0);
  tables.forEach((table, i) => {
    const shift = filled[i] ?? 0;
    const t = shift === 0 ? table.time.seconds : table.time.seconds.map((s) => s + shift);
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
  return { tables, shifts: filled, series };
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
