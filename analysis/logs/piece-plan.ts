/**
 * A large file in pieces that are read apart, at the same time, and joined. Lines can be told apart without what stands
 * before them only where no cell is quoted: each piece says whether it met anything of that kind, and then the file is
 * read from its start, in one go.
 */
import { emptyGathered } from './gathered.ts';
import type { ReadOptions } from './read-outcome.ts';
import { rowReader } from './rows/row-reader.ts';
import { type RowStore, trimRows } from './rows/row-store.ts';
import { type FoundHead, findHead, storeFor } from './start-rows.ts';
import { type Encoding, notText, sniffEncoding } from './text/encoding.ts';

/** What the head of a file tells those that read its pieces: plain data. */
export interface PiecePlan extends FoundHead {
  encoding: Encoding;
  /** bytes of the byte-order mark */
  markBytes: number;
}

/** A piece that has been read: plain data. */
export interface PieceRows {
  store: RowStore;
  /** lines of the piece, count */
  lines: number;
  /** it can be joined to what stands before it */
  sound: boolean;
}

/** Bytes of the head. */
export const HEAD_BYTES = 1 << 16;
const CHUNK = 1 << 20;
const NEWLINE = 10;
/** Rows above a last line that is cut, by which its last cell is judged. */
const ROWS_FOR_LAST = 200;

/**
 * A plan for reading a file in pieces.
 * @param head its first HEAD_BYTES bytes, bytes
 * @param options name, hash, what a person confirmed, object
 * @param whole true when they are all of it
 * @returns the plan, or null where it must be read in one go
 */
export function planPieces(head: Uint8Array, options: ReadOptions, whole = false): PiecePlan | null {
  if (options.exact || notText(head)) return null;
  const { encoding, markBytes } = sniffEncoding(head);
  if ((encoding !== 'utf-8' && encoding !== 'latin-1') || head.includes(0)) return null;
  const gathered = emptyGathered(options);
  gathered.encoding = encoding;
  const found = findHead(gathered, head.subarray(markBytes), whole);
  if (!found) return null;
  const { delimiter, decimal } = found.layout;
  if (delimiter === 'spaces' || delimiter === 'fixed' || delimiter === decimal) return null;
  return { ...found, encoding, markBytes };
}

/**
 * Read one piece: whole lines of the file, the first one without its byte-order mark.
 * @param plan from planPieces
 * @param place of the piece in the file, object: first, last, bytes
 * @param fill puts the next bytes of the piece into an array and gives their count, 0 at its end, function
 * @returns its rows
 */
export function readPiece(
  plan: PiecePlan,
  place: { isFirst: boolean; isLast: boolean; size: number },
  fill: (into: Uint8Array) => number,
): PieceRows {
  const store = storeFor(plan, place.size);
  const reader = rowReader(plan.layout, store, { apart: place.isFirst ? 'first' : 'later' });
  const buffer = new Uint8Array(2 * CHUNK);
  let held = 0;
  let sound = true;
  while (sound) {
    const count = fill(buffer.subarray(held, held + CHUNK));
    const last = count === 0;
    const bytes = buffer.subarray(0, held + count);
    // Of a last line without an end no one else looks at the bytes.
    if (last && bytes.includes(0)) sound = false;
    const end = last ? bytes.length : bytes.lastIndexOf(NEWLINE) + 1;
    if (sound && end > 0) reader.take(bytes.subarray(0, end), last && place.isLast);
    if (reader.unsure()) sound = false;
    if (last) break;
    buffer.copyWithin(0, end, bytes.length);
    held = bytes.length - end;
    // A line as long as that is no line.
    if (held > CHUNK || store.full) sound = false;
  }
  // What a cut last line is judged by may stand in the piece before.
  if (store.cutLine !== null && store.rows < ROWS_FOR_LAST) sound = false;
  if (store.cutLine === 'last cell left out' && store.columns.at(-1)?.kind === 'text') sound = false;
  if (place.isFirst && reader.lines() < plan.layout.firstRowLine) sound = false;
  trimRows(store);
  return { store, lines: reader.lines(), sound };
}
