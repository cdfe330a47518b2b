/**
 * A table turned: readings run down, runs stand side by side. Taken where a run's readings would otherwise be parted
 * over several tables, so that everything read at one moment stands in one column of one sheet.
 */
import type { ReadingTable, RowGroup } from './card.ts';
import { columnNeed } from './column-widths.ts';
import { words } from './line.ts';
import { linesIn, lineWidth, textWidth } from './measure-text.ts';
import { MEASURES_MM, pitchesOf, TYPE_SCALES, type TypeSize } from './sheet-size.ts';

export interface Crosswise {
  /** widths, mm: what is read, its single expectation (0 where there is none), one run */
  label: number;
  expect: number;
  run: number;
  /** heights, mm: group heads (0 where there are none), run heads, each reading */
  groupHeight: number;
  headHeight: number;
  rowHeights: number[];
  /** above each reading, what each run is expected to read: 0 where runs have none of their own */
  expectHeights: number[];
  /** runs of each block, from and to */
  blocks: { from: number; to: number; height: number }[];
}

/** a turned table may be this much higher in all before the parted one is the better */
const WORTH = 1.25;
const LABEL_LEAST = 19.6;
const PADDING = 1.1;
const BLOCK_GAP = 2.2;

/**
 * The table turned.
 * @param table the readings, object
 * @param content width of the sheet, mm
 * @param type type size, text
 * @param sets tables the upright one is parted into, count
 * @param room height of an empty sheet, mm
 * @returns widths and blocks, or null where the upright table is the better
 */
export function turnTable(
  table: ReadingTable,
  content: number,
  type: TypeSize,
  sets: number,
  room: number,
): Crosswise | null {
  if (sets < 2 || table.columns.some((column) => column.write === 'words')) return null;
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const face = { words: scale.body, numbers: scale.body };
  const heads = table.rows.map((row) => lineWidth(row.head, face) + 2 * PADDING);
  const perGroup = Math.min(...table.groups.map((one) => table.rows.filter((row) => row.group === one.key).length));
  const needs = table.columns.map(
    (column) => columnNeed(column, table, scale, false).write / (column.perGroup ? perGroup : 1),
  );
  const own = table.columns.flatMap((column) =>
    table.rows.map((row) => textWidth(row.cells[column.key]?.expect?.text ?? '', scale.body) + 2 * PADDING),
  );
  const run = Math.max(...needs, ...heads, ...own);
  const expects = table.columns.map((column) => (column.expect ? textWidth(column.expect.text, scale.body) : 0));
  const expect = Math.max(...expects) > 0 ? Math.max(...expects, textWidth('expect', scale.small)) + 2 * PADDING : 0;
  const word = Math.max(
    ...table.columns.flatMap((one) => one.label.split(/[ -]/).map((w) => textWidth(w, scale.small))),
  );
  const least = Math.max(LABEL_LEAST, word + 2 * PADDING);
  const perBlock = Math.floor((content - least - expect - MEASURES_MM.line) / run);
  if (perBlock < 2) return null;
  const label = content - expect - MEASURES_MM.line - perBlock * run;
  const small = { words: scale.small, numbers: scale.small };
  const rowHeights = table.columns.map((column) => {
    const lines = linesIn(words(`${column.label} ${column.unit}`), small, label - 2 * PADDING - 0.6);
    return Math.max(MEASURES_MM.boxHeight, lines * pitch.small + 0.8) + MEASURES_MM.line;
  });
  const expectHeights = table.columns.map((column) => (column.expectsByRow ? pitch.body + MEASURES_MM.line : 0));
  const headLines = linesIn(words(`${table.head.label} ${table.head.unit}`), small, label - 2 * PADDING - 0.6);
  const headHeight = Math.max(pitch.body, headLines * pitch.small) + 1.2;
  const dealt = dealRuns(table, perBlock);
  const groupLines = dealt.flatMap((block) =>
    table.groups.map((group) => {
      const span = table.rows.slice(block.from, block.to).filter((row) => row.group === group.key).length;
      return span === 0
        ? 0
        : linesIn([...group.head, ...words(aimedText(group))], face, span * run - 2 * PADDING - 0.6);
    }),
  );
  const groupLeast = table.groupHead.write ? MEASURES_MM.boxHeight + MEASURES_MM.line : headHeight;
  const minuteHeight = table.groupHead.minute ? MEASURES_MM.boxHeight + MEASURES_MM.line : 0;
  const groupHeight = table.groups.length === 0 ? 0 : Math.max(groupLeast, Math.max(...groupLines) * pitch.body + 1.2);
  const height =
    rowHeights.reduce((sum, one) => sum + one, groupHeight + minuteHeight + headHeight + MEASURES_MM.line) +
    expectHeights.reduce((sum, one) => sum + one, 0);
  const blocks = dealt.map((block) => ({ ...block, height: height + BLOCK_GAP }));
  const upright = sets * (table.rows.length * (MEASURES_MM.boxHeight + MEASURES_MM.line) + 3 * pitch.small);
  const turned = blocks.length * (height + BLOCK_GAP);
  return height <= room && turned <= WORTH * upright
    ? { label, expect, run, groupHeight, headHeight, rowHeights, expectHeights, blocks }
    : null;
}

/** What was set down at a group's head stands behind it, a little apart. */
function aimedText({ measured }: RowGroup): string {
  return measured ? `    ${measured.text}` : '';
}

/** Runs dealt into blocks; a group that fits a block is kept whole. */
function dealRuns(table: ReadingTable, perBlock: number): { from: number; to: number }[] {
  const blocks: { from: number; to: number }[] = [];
  let from = 0;
  const close = (to: number) => {
    if (to > from) blocks.push({ from, to });
    from = to;
  };
  table.rows.forEach((row, i) => {
    const opens = i > 0 && row.group !== table.rows[i - 1]?.group;
    const size = table.rows.filter((one) => one.group === row.group).length;
    if (i - from >= perBlock || (opens && row.group !== null && size <= perBlock && i - from + size > perBlock))
      close(i);
  });
  close(table.rows.length);
  return blocks;
}
