/** A table's columns on a sheet: how wide each must be, and how many tables side columns are dealt into. */
import type { Column, ReadingTable } from './card.ts';
import { plainText, words } from './line.ts';
import { linesIn, lineWidth, measuredWidth, textWidth } from './measure-text.ts';
import { boxWidth, MEASURES_MM, pitchesOf, TYPE_SCALES, type TypeScale, type TypeSize } from './sheet-size.ts';

export interface PlacedColumn {
  /** index in the table's columns */
  column: number;
  /** the box to write in, mm, and the printed half before it, 0 where there is none */
  write: number;
  expect: number;
}

export interface PlacedColumns {
  /** group cell, 0 where rows are not grouped; row head; both mm */
  group: number;
  head: number;
  columns: PlacedColumn[];
  /** height of the head row, and of a single expectation under it (0 where there is none), mm */
  headHeight: number;
  expectHeight: number;
  /** a narrow table stands in so many blocks side by side, its rows running down each in turn */
  blocks: number;
}

const PADDING = 1.1;
const WORDS_WIDTH = 40;
const TICK_WIDTH = 18.2;
const HEAD_MAXIMUM = 0.34;
/** a head that is written by hand */
const BLANK_HEAD = 34;
/** rows from which a narrow table is set in blocks, and the space between them */
const LONG = 6;
export const BLOCK_GAP = 4;

/**
 * Deal a table's columns into as few sets as fit the width, evenly, each with the row heads before it.
 * @param table the readings, object
 * @param content width of the sheet, mm
 * @param type type size, text
 * @returns one entry a set
 */
export function placeColumns(table: ReadingTable, content: number, type: TypeSize): PlacedColumns[] {
  const scale = TYPE_SCALES[type];
  const head = headWidth(table, content, scale);
  const group = groupWidth(table, scale);
  const room = content - head - group - MEASURES_MM.line;
  const needs = table.columns.map((column) => columnNeed(column, table, scale));
  return dealEvenly(
    needs.map((need) => need.write + need.expect),
    room,
  ).map(([from, to]) => {
    const set = needs.slice(from, to);
    const spare = room - set.reduce((sum, need) => sum + need.write + need.expect, 0);
    const columns = set.map((need, i) => ({
      column: from + i,
      write: need.write + Math.max(0, spare) / set.length,
      expect: need.expect,
    }));
    return { group, head, columns, blocks: 1, ...headHeights(table, columns, type, head) };
  });
}

/**
 * The same table in several blocks side by side, where it is narrow and long enough.
 * @param table the readings, object
 * @param content width of the sheet, mm
 * @param type type size, text
 * @returns the columns of one block, or null where the table is better in one
 */
export function placeInBlocks(table: ReadingTable, content: number, type: TypeSize): PlacedColumns | null {
  if (table.groups.length > 0 || table.rows.length < LONG) return null;
  const scale = TYPE_SCALES[type];
  const needs = table.columns.map((column) => columnNeed(column, table, scale));
  const width = needs.reduce((sum, need) => sum + need.write + need.expect, headWidth(table, content, scale)) + 1;
  const blocks = Math.min(3, Math.floor((content + BLOCK_GAP) / (width + BLOCK_GAP)));
  if (blocks < 2) return null;
  const sets = placeColumns(table, (content - (blocks - 1) * BLOCK_GAP) / blocks, type);
  const [only] = sets;
  return only && sets.length === 1 ? { ...only, blocks } : null;
}

/**
 * Width a column needs.
 * @param headed true where its label stands above it
 */
export function columnNeed(
  column: Column,
  table: ReadingTable,
  scale: TypeScale,
  headed = true,
): { write: number; expect: number } {
  const label = Math.max(
    0,
    ...(headed ? `${column.label} ${column.unit}` : '').split(/[ /-]/).map((word) => textWidth(word, scale.small)),
  );
  const box = { number: boxWidth(column.digits), clock: boxWidth(4), words: WORDS_WIDTH, tick: TICK_WIDTH }[
    column.write
  ];
  const values = table.rows.map((row) => measuredWidth(row.cells[column.key]?.measured ?? null, scale));
  const value = Math.max(0, ...values) + 2 * PADDING;
  const single = column.expect && headed ? textWidth(column.expect.text, scale.body) : 0;
  const write = Math.max(box, value, label + 2 * PADDING, single + 2 * PADDING) + MEASURES_MM.line;
  if (!column.expectsByRow) return { write, expect: 0 };
  const texts = table.rows.map((row) => row.cells[column.key]?.expect?.text ?? '');
  const widest = Math.max(textWidth('expect', scale.small), ...texts.map((text) => textWidth(text, scale.body)));
  return {
    write: Math.max(box, value, textWidth('read', scale.small) + 2 * PADDING) + MEASURES_MM.line,
    expect: widest + 2 * PADDING,
  };
}

function headWidth(table: ReadingTable, content: number, scale: TypeScale): number {
  const face = { words: scale.body, numbers: scale.body };
  const widest = Math.max(...table.rows.map((row) => lineWidth(row.head, face)));
  const expects = table.columns.some((column) => column.expect !== null) ? textWidth('expect', scale.small) : 0;
  const label = Math.max(
    expects,
    ...`${table.head.label} ${table.head.unit}`.split(' ').map((w) => textWidth(w, scale.small)),
  );
  const blank = table.rows.some((row) => row.head.length === 0) ? BLANK_HEAD : 0;
  return Math.min(content * HEAD_MAXIMUM, Math.max(blank, widest + 2 * PADDING, label + 2 * PADDING) + 0.6);
}

function groupWidth(table: ReadingTable, scale: TypeScale): number {
  if (table.groups.length === 0) return 0;
  const widths = table.groups.flatMap((group) =>
    group.head.flatMap((token) =>
      token.kind === 'number'
        ? [textWidth(token.number, scale.number), textWidth(token.unit, scale.body)]
        : [
            Math.max(
              ...plainText([token])
                .split(' ')
                .map((word) => textWidth(word, scale.body)),
            ),
          ],
    ),
  );
  const box = table.groupHead.write ? boxWidth(3) : 0;
  return Math.max(box, Math.max(...widths) + 2 * PADDING + 0.8) + MEASURES_MM.line;
}

function headHeights(table: ReadingTable, columns: PlacedColumn[], type: TypeSize, head: number) {
  const scale = TYPE_SCALES[type];
  const { small, body } = pitchesOf(type);
  const face = { words: scale.small, numbers: scale.small };
  const linesOf = (label: string, width: number) => linesIn(words(label), face, width - 2 * PADDING);
  const placed = columns.flatMap(({ column, write, expect }) => {
    const one = table.columns[column];
    return one ? [{ one, width: write + expect }] : [];
  });
  const labels = placed.map(
    ({ one, width }) => linesOf(one.label, width) + (one.unit === '' ? 0 : 1) + (one.expectsByRow ? 1 : 0),
  );
  const headLines = linesOf(table.head.label, head) + (table.head.unit === '' ? 0 : 1);
  return {
    headHeight: Math.max(headLines, ...labels) * small + 1.8,
    expectHeight: placed.some(({ one }) => one.expect !== null) ? body + 1.2 : 0,
  };
}

/** The fewest contiguous sets that fit, with the widest set as narrow as it can be. */
function dealEvenly(needs: number[], room: number): [number, number][] {
  const fewest = dealBy(needs, room);
  let low = Math.max(...needs);
  let high = room;
  for (let i = 0; i < 24 && fewest.length > 1; i++) {
    const middle = (low + high) / 2;
    if (dealBy(needs, middle).length <= fewest.length) high = middle;
    else low = middle;
  }
  return fewest.length > 1 ? dealBy(needs, high) : fewest;
}

function dealBy(needs: number[], room: number): [number, number][] {
  const sets: [number, number][] = [];
  let from = 0;
  let used = 0;
  needs.forEach((need, i) => {
    if (i > from && used + need > room) {
      sets.push([from, i]);
      from = i;
      used = 0;
    }
    used += need;
  });
  sets.push([from, needs.length]);
  return sets;
}
