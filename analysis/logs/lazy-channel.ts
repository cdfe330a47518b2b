/** Channels whose numbers stay as small as they were written until someone asks for the values. */
import type { ReadOutcome } from './read-outcome.ts';
import { allNumbers, type KeptNumbers, numberAt } from './rows/kept-numbers.ts';
import type { LogChannel, LogTable } from './table.ts';

/** Numbers as written, and what makes SI of them. */
export interface WrittenNumbers {
  kept: KeptNumbers;
  factor: number;
  offset: number;
}

/** A reading as plain data: it passes between threads and into files, which accessors do not. */
export interface Parcel {
  outcome: Omit<ReadOutcome, 'table'>;
  table: (Omit<LogTable, 'channels'> & { channels: ParcelChannel[] }) | null;
}

type ParcelChannel = Omit<LogChannel, 'values' | 'written'> & { numbers: Float64Array | WrittenNumbers };

/**
 * A channel of numbers.
 * @param channel all but its values, object
 * @param written its numbers as written, object
 * @returns the channel; its values are made when they are first asked for
 */
export function channelOfNumbers(channel: Omit<LogChannel, 'values' | 'written'>, written: WrittenNumbers): LogChannel {
  let made: Float64Array | undefined;
  return {
    ...channel,
    get values() {
      if (!made) {
        made = allNumbers(written.kept, written.factor, written.offset);
        // One of the two is enough to keep.
        delete this.written;
      }
      return made;
    },
    set values(values) {
      made = values;
      delete this.written;
    },
    written,
  };
}

/**
 * Single values of a channel, without making all of them.
 * @param channel the channel
 * @returns function of a row, count; the value there, NaN where there is none
 */
export function valuesOneByOne(channel: LogChannel): (row: number) => number {
  const { written } = channel;
  if (!written) {
    const { values } = channel;
    return (row) => values[row] ?? Number.NaN;
  }
  const { kept, factor, offset } = written;
  return (row) => numberAt(kept, row) * factor + offset;
}

/**
 * Memory that the numbers of a channel take.
 * @param channel the channel
 * @returns bytes
 */
export function bytesOfChannel(channel: LogChannel): number {
  const { written } = channel;
  return written
    ? written.kept.pieces.reduce((sum, { values }) => sum + values.byteLength, 0)
    : channel.values.byteLength;
}

/**
 * Make a reading ready to be sent.
 * @param outcome the reading
 * @returns plain data
 */
export function parcelOf({ table, ...outcome }: ReadOutcome): Parcel {
  if (!table) return { outcome, table: null };
  const channels = table.channels.map((channel): ParcelChannel => {
    const { column, index, name, quantity, unit, confidence, why, valid, flags, texts, written } = channel;
    const base = { column, index, name, quantity, unit, confidence, why, valid, flags, ...(texts ? { texts } : {}) };
    return { ...base, numbers: written ?? channel.values };
  });
  return { outcome, table: { ...table, channels } };
}

/**
 * Take a reading out again.
 * @param parcel plain data
 * @returns the reading
 */
export function unpack({ outcome, table }: Parcel): ReadOutcome {
  if (!table) return { ...outcome, table: null };
  const channels = table.channels.map(({ numbers, ...channel }): LogChannel => {
    return numbers instanceof Float64Array ? { ...channel, values: numbers } : channelOfNumbers(channel, numbers);
  });
  return { ...outcome, table: { ...table, channels } };
}

/**
 * The memory a parcel holds, for handing it over without a copy.
 * @param parcel plain data
 * @returns buffers, each once
 */
export function buffersOf({ table }: Parcel): ArrayBuffer[] {
  const arrays = (table?.channels ?? []).flatMap(({ numbers }) =>
    numbers instanceof Float64Array ? [numbers] : numbers.kept.pieces.map(({ values }) => values),
  );
  const buffers = [...arrays, ...(table ? [table.time.seconds] : [])].map(({ buffer }) => buffer);
  return [...new Set(buffers)].flatMap((buffer) => (buffer instanceof ArrayBuffer ? [buffer] : []));
}
