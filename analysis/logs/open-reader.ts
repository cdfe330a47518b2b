/** A reader that is fed a file piece by piece: dialect from the head, rows into columns, then their meaning. */
import { problem } from '../remarks/index.ts';
import { isColumnName } from './channels/is-column-name.ts';
import { finishReading } from './finish-reading.ts';
import { emptyGathered, type Gathered } from './gathered.ts';
import { HEAD_BYTES } from './piece-plan.ts';
import type { ReadOptions, ReadOutcome } from './read-outcome.ts';
import { trimRows } from './rows/row-store.ts';
import { startRows } from './start-rows.ts';
import { notText, sniffEncoding, toAsciiCompatible } from './text/encoding.ts';
import { zeroFilter } from './text/zero-bytes.ts';

export interface PushReader {
  push(chunk: Uint8Array): void;
  finish(): ReadOutcome;
  /** the file cannot be read: pushing more changes nothing */
  failed(): boolean;
}

/** The head in which the layout must show grows by these steps: a preamble may be long. */
const HEADS = [HEAD_BYTES, 1 << 18, 1 << 20, 1 << 22];
const LONGEST_LINE = 1 << 20;
const PIECE = 1 << 20;
const NEWLINE = 10;
const NOTHING = new Uint8Array(0);

/**
 * Open a reader for one file.
 * @param options name, hash, what a person confirmed, object
 * @returns functions to push the bytes in order and to end
 */
export function openReader(options: ReadOptions): PushReader {
  const gathered = emptyGathered(options);
  const zeros = zeroFilter();
  let pending: Uint8Array<ArrayBufferLike> = NOTHING;
  let decode: ((piece: Uint8Array, last: boolean) => Uint8Array) | null = null;
  let reader: ReturnType<typeof startRows> = null;
  let head = 0;

  const begin = (last: boolean): void => {
    if (!decode) {
      const what = notText(pending);
      if (what) {
        gathered.problem = problem('not-a-log', `This is ${what}, not a table of readings.`);
        return;
      }
      const { encoding, markBytes } = sniffEncoding(pending);
      gathered.encoding = encoding;
      decode = toAsciiCompatible(encoding);
      pending = zeros.take(decode(pending.subarray(markBytes), last), last);
    }
    reader = startRows(gathered, pending, last);
    if (reader || gathered.problem) return;
    if (!last && head + 1 < HEADS.length) {
      head += 1;
      return;
    }
    gathered.problem = noRows(gathered.firstLines);
  };

  const drain = (last: boolean): void => {
    if (gathered.problem || !reader) return;
    const taken = pending.length > 0 ? reader.take(pending, last) : 0;
    pending = pending.length === taken ? NOTHING : new Uint8Array(pending.subarray(taken));
    if (gathered.store?.full)
      gathered.problem = problem('too-large', 'The file holds more readings than fit in memory.');
    else if (pending.length > 2 * LONGEST_LINE) {
      gathered.problem = problem('line-too-long', `A line is longer than ${LONGEST_LINE} bytes.`);
    }
  };

  const receive = (chunk: Uint8Array, last: boolean): void => {
    let piece = decode ? zeros.take(decode(chunk, last), last) : chunk;
    if (reader && pending.length > 0 && !last) {
      // Only the line that was cut is put together; the rest of the piece is read where it lies.
      const lineEnd = piece.indexOf(NEWLINE) + 1;
      pending = join(pending, piece.subarray(0, lineEnd));
      piece = piece.subarray(lineEnd);
      if (lineEnd > 0) drain(false);
    }
    pending = join(pending, piece);
    if (!reader && (last || pending.length >= (HEADS[head] ?? 0))) begin(last);
    drain(last);
    // The piece may lie in a buffer that its owner uses again.
    if (pending === piece) pending = new Uint8Array(piece);
  };

  return {
    failed: () => gathered.problem !== null,
    push(chunk) {
      gathered.bytes += chunk.length;
      // Small steps bound what a single line can hold up.
      let from = 0;
      while (from < chunk.length && !gathered.problem) {
        const step = reader ? PIECE : HEAD_BYTES;
        receive(chunk.subarray(from, from + step), false);
        from += step;
      }
    },
    finish() {
      if (!gathered.problem && gathered.bytes > 0) {
        receive(new Uint8Array(0), true);
        // A head that was still growing when the file ended.
        if (!reader && !gathered.problem) begin(true);
        drain(true);
      }
      gathered.nulBytes = zeros.dropped();
      if (gathered.store) trimRows(gathered.store);
      return finishReading(gathered);
    },
  };
}

/**
 * Read a file that is in memory.
 * @param bytes the file, bytes
 * @param options name, hash, what a person confirmed, object
 * @returns the reading
 */
export function readLogBytes(bytes: Uint8Array, options: ReadOptions): ReadOutcome {
  const reader = openReader({ sizeBytes: bytes.length, ...options });
  reader.push(bytes);
  return reader.finish();
}

function noRows(firstLines: readonly string[]): Gathered['problem'] {
  const written = firstLines.filter((line) => line.trim() !== '');
  const cells = (written[0] ?? '').split(/[,;\t|]/);
  const named = cells.filter((cell) => isColumnName(cell)).length;
  return written.length <= 3 && cells.length > 1 && named * 2 >= cells.length
    ? problem('no-rows', 'A header stands in the file, but no row of numbers follows it.', { line: 1 })
    : problem('not-a-log', 'No rows of readings were found: the file is text, not a table.', { line: 1 });
}

function join(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b;
  if (b.length === 0) return a;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
