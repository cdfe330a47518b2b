/** Pieces of a file that were read apart, joined to what reading it in one go gives. */
import { finishReading } from './finish-reading.ts';
import { emptyGathered } from './gathered.ts';
import type { PiecePlan, PieceRows } from './piece-plan.ts';
import type { ReadOptions, ReadOutcome } from './read-outcome.ts';
import type { ColumnStore } from './rows/column-store.ts';
import { joinNumbers } from './rows/kept-numbers.ts';
import { MOST_CELLS, MOST_REJECTED, type RowStore, rowStore } from './rows/row-store.ts';

/**
 * Join the pieces of a file.
 * @param plan they were read by
 * @param pieces in order
 * @param bytes of the file, count
 * @param options name, hash, what a person confirmed, object
 * @returns the reading, or null where the pieces do not fit each other and the file must be read in one go
 */
export function joinPieces(
  plan: PiecePlan,
  pieces: readonly PieceRows[],
  bytes: number,
  options: ReadOptions,
): ReadOutcome | null {
  const rows = pieces.reduce((sum, { store }) => sum + store.rows, 0);
  const width = plan.layout.columns.length;
  if (pieces.some(({ sound }) => !sound) || rows * width > MOST_CELLS) return null;
  const columns = plan.kinds.map((_, c) => {
    return joinColumn(
      pieces.flatMap(({ store }) => {
        const column = store.columns[c];
        return column ? [{ column, rows: store.rows }] : [];
      }),
      rows,
    );
  });
  if (columns.includes(null)) return null;
  const store = rowStore(
    columns.flatMap((column) => column ?? []),
    plan.layout.trailingDelimiter ? 1 : 0,
    rows,
  );
  addCounts(store, pieces);
  const gathered = { ...emptyGathered(options), bytes, encoding: plan.encoding, layout: plan.layout, store };
  return finishReading(gathered);
}

/** What was left out or was odd, its rows and lines counted from the start of the file. */
function addCounts(store: RowStore, pieces: readonly PieceRows[]): void {
  let line = 0;
  for (const { store: piece, lines } of pieces) {
    const { rows } = store;
    const offset = line;
    for (const { line: at, reason } of piece.rejected) {
      if (store.rejected.length < MOST_REJECTED) store.rejected.push({ line: at + offset, reason });
    }
    for (const at of piece.breaks) if (store.breaks.at(-1) !== rows + at) store.breaks.push(rows + at);
    if (store.shortRows === 0) store.firstShortLine = piece.firstShortLine + offset;
    store.rejectedCount += piece.rejectedCount;
    store.shortRows += piece.shortRows;
    store.repeatedHeaders += piece.repeatedHeaders;
    store.cutLine = piece.cutLine ?? store.cutLine;
    store.rows += piece.rows;
    line += lines;
  }
}

interface Part {
  column: ColumnStore;
  rows: number;
}

/** One column of all pieces; null where they took its cells for different things. */
function joinColumn(parts: readonly Part[], rows: number): ColumnStore | null {
  const decided = parts.filter(({ column }) => !column.undecided);
  const [lead] = decided.length > 0 ? decided : parts;
  if (!lead || decided.some(({ column }) => column.kind !== lead.column.kind)) return null;
  const joined: ColumnStore = {
    ...lead.column,
    odd: { count: 0, firstRow: -1, lastRow: -1, example: '' },
    formulas: 0,
  };
  const { kind } = joined;
  const isOfNumbers = kind === 'number';
  joined.kept = isOfNumbers ? joinNumbers(parts.map(({ column }) => column.kept)) : joined.kept;
  joined.first = inOne(parts, isOfNumbers ? 0 : rows, ({ column }) => (column.kind === kind ? column.first : null));
  joined.second = inOne(parts, kind === 'date-time' ? rows : 0, ({ column }) => column.second);
  joined.offsets = parts.some(({ column }) => column.offsets)
    ? inOne(parts, rows, ({ column }) => column.offsets)
    : null;
  joined.clockExample = parts.find(({ column }) => column.clockExample !== '')?.column.clockExample ?? '';
  if (kind === 'text') joinTexts(joined, parts);
  let row = 0;
  for (const { column, rows: count } of parts) {
    const { odd } = column;
    if (odd.count > 0) {
      if (joined.odd.count === 0) Object.assign(joined.odd, { firstRow: row + odd.firstRow, example: odd.example });
      joined.odd.lastRow = row + odd.lastRow;
      joined.odd.count += odd.count;
    }
    joined.formulas += column.formulas;
    row += count;
  }
  return joined;
}

/** Arrays behind each other; nothing stands where a piece has none. */
function inOne(parts: readonly Part[], length: number, arrayOf: (part: Part) => Float64Array | null): Float64Array {
  const whole = new Float64Array(length);
  if (length === 0) return whole;
  let row = 0;
  for (const part of parts) {
    const array = arrayOf(part);
    if (array && array.length > 0) whole.set(array.subarray(0, part.rows), row);
    else whole.fill(Number.NaN, row, row + part.rows);
    row += part.rows;
  }
  return whole;
}

/** Each piece counts its texts in the order in which it met them. */
function joinTexts(joined: ColumnStore, parts: readonly Part[]): void {
  joined.texts = [];
  joined.indexOfText = new Map();
  let row = 0;
  for (const { column, rows } of parts) {
    const places = column.texts.map((text) => {
      const known = joined.indexOfText.get(text);
      if (known !== undefined) return known;
      joined.texts.push(text);
      joined.indexOfText.set(text, joined.texts.length - 1);
      return joined.texts.length - 1;
    });
    for (let i = row; i < row + rows; i += 1) joined.first[i] = places[joined.first[i] ?? -1] ?? Number.NaN;
    row += rows;
  }
}

/**
 * The memory a piece holds, for handing it over without a copy.
 * @param piece plain data
 * @returns buffers, each once
 */
export function buffersOfPiece({ store }: PieceRows): ArrayBuffer[] {
  const arrays = store.columns.flatMap(({ kept, numbers, first, second, offsets }) => [
    ...kept.pieces.map(({ values }) => values),
    numbers.values,
    first,
    second,
    ...(offsets ? [offsets] : []),
  ]);
  const buffers = new Set(arrays.map(({ buffer }) => buffer));
  return [...buffers].flatMap((buffer) => (buffer instanceof ArrayBuffer ? [buffer] : []));
}
