/** What a card is made of, in runs of lines and rows that may be dealt onto sheets. */
import type { Card, ReadingTable } from './card.ts';
import { type PlacedColumns, placeColumns, placeInBlocks } from './column-widths.ts';
import { type Crosswise, turnTable } from './crosswise.ts';
import type { Section } from './deal.ts';
import { headlineOf } from './headline.ts';
import { words } from './line.ts';
import { linesIn } from './measure-text.ts';
import { aheadHeight, boxRows, rowHeight, stepHeight, tickedRows } from './part-heights.ts';
import { MEASURES_MM, pitchesOf, TYPE_SCALES, type TypeSize } from './sheet-size.ts';

export type SheetPart =
  | { kind: 'aim'; text: string }
  | { kind: 'missing' }
  | { kind: 'gates' | 'steps' | 'boxes' | 'after'; from: number; to: number }
  | { kind: 'table'; table: number; from: number; to: number; placed: PlacedColumns; first: boolean }
  | { kind: 'turned'; table: number; turned: Crosswise; first: boolean }
  | { kind: 'ahead'; ahead: number }
  | { kind: 'log' }
  | { kind: 'sources'; from: number; to: number };

/**
 * The parts of a card, each with the height of its rows.
 * @param card the card, object
 * @param content width of the sheet, mm
 * @param type type size, text
 * @param room height of an empty sheet, mm
 * @returns sections in order, parts without rows left out
 */
export function sectionsOf(card: Card, content: number, type: TypeSize, room: number) {
  const pitch = pitchesOf(type);
  const { gap } = MEASURES_MM;
  const label = pitch.small + 0.4 + gap;
  const ranged =
    (kind: 'gates' | 'steps' | 'boxes' | 'after', spans: { from: number; to: number }[]) =>
    (from: number, to: number) => ({
      kind,
      from: spans[from]?.from ?? 0,
      to: spans[to - 1]?.to ?? 0,
    });
  const rowsOf = (
    kind: 'gates' | 'steps' | 'boxes' | 'after',
    spans: { from: number; to: number; height: number }[],
  ): Section<SheetPart>['rows'] => spans.map(({ height }) => ({ height, part: ranged(kind, spans), keep: false }));

  const steps = card.steps.map((step, i) => ({ from: i, to: i + 1, height: stepHeight(step, content, type) }));
  const before: Section<SheetPart>[] = [];
  const { rest } = headlineOf(card, content, type);
  if (rest !== '') {
    const face = { words: TYPE_SCALES[type].note, numbers: TYPE_SCALES[type].note };
    const height = linesIn(words(rest), face, content) * pitch.note;
    before.push({ header: gap, least: 1, rows: [{ height, keep: false, part: () => ({ kind: 'aim', text: rest }) }] });
  }
  if (card.missing.length > 0) {
    const height = missingHeight(card, content, type);
    before.push({ header: gap, least: 1, rows: [{ height, keep: false, part: () => ({ kind: 'missing' }) }] });
  }
  before.push({ header: label, least: 2, rows: rowsOf('gates', tickedRows(card.gates, content, type)) });
  const ahead: Section<SheetPart>[] = card.ahead.map((one, i) => ({
    header: gap,
    least: 1,
    rows: [{ height: aheadHeight(one, content, type), keep: false, part: () => ({ kind: 'ahead', ahead: i }) }],
  }));
  const readings: Section<SheetPart>[] = card.tables.flatMap((table, i) =>
    tableSections(card, table, i, content, type, room),
  );
  readings.unshift(...ahead);
  readings.push({ header: gap, least: 1, rows: rowsOf('boxes', boxRows(card.boxes, content, type)) });
  const after: Section<SheetPart>[] = [
    { header: label, least: 1, rows: rowsOf('after', tickedRows(card.after, content, type)) },
  ];
  const log: Section<SheetPart>[] = [];
  if (card.log.length > 0) {
    const height = MEASURES_MM.boxHeight + 1.2;
    log.push({ header: gap, least: 1, rows: [{ height, keep: false, part: () => ({ kind: 'log' }) }] });
  }
  if (card.sources.length + card.exceeded.length > 0) {
    const part = (from: number, to: number): SheetPart => ({ kind: 'sources', from, to });
    const rows = sourceHeights(card, content, type).map((height) => ({ height, keep: false, part }));
    log.push({ header: gap, least: 1, rows });
  }
  const kept = (sections: Section<SheetPart>[]) => sections.filter((section) => section.rows.length > 0);
  return {
    before: kept(before),
    steps: kept([{ header: gap, least: 2, rows: rowsOf('steps', steps) }]),
    readings: kept(readings),
    after: kept(after),
    log: kept(log),
  };
}

function tableSections(
  card: Card,
  table: ReadingTable,
  index: number,
  content: number,
  type: TypeSize,
  room: number,
): Section<SheetPart>[] {
  const pitch = pitchesOf(type);
  const face = { words: TYPE_SCALES[type].note, numbers: TYPE_SCALES[type].note };
  const title = table.title === '' ? 0 : linesIn(words(table.title), face, content) * pitch.note + 0.8;
  const { small } = TYPE_SCALES[type];
  const noteLines = linesIn(words(card.expectNote), { words: small, numbers: small }, content);
  const note = index === 0 && card.expectNote !== '' ? noteLines * pitch.small + 0.6 : 0;
  const headed = (placed: PlacedColumns) =>
    MEASURES_MM.gap + title + placed.headHeight + placed.expectHeight + MEASURES_MM.line;
  const folded = placeInBlocks(table, content, type);
  if (folded) {
    const count = Math.ceil(table.rows.length / folded.blocks);
    const height = count * Math.max(...table.rows.map((row) => rowHeight(table, row, folded, type)));
    const part = (): SheetPart => ({
      kind: 'table',
      table: index,
      from: 0,
      to: table.rows.length,
      placed: folded,
      first: true,
    });
    // only where all of it fits one sheet, so that rows are read in order
    if (headed(folded) + note + height <= room) {
      return [{ header: headed(folded) + note, least: 1, rows: [{ height, keep: false, part }] }];
    }
  }
  const sets = placeColumns(table, content, type);
  const turned = turnTable(table, content, type, sets.length, room - MEASURES_MM.gap - title - note);
  if (turned) {
    const rows = turned.blocks.map((block) => ({
      height: block.height,
      keep: false,
      part: (from: number, to: number): SheetPart => ({
        kind: 'turned',
        table: index,
        turned: { ...turned, blocks: turned.blocks.slice(from, to) },
        first: from === 0,
      }),
    }));
    return [{ header: MEASURES_MM.gap + title + note, least: 1, rows }];
  }
  return sets.map((placed, set) => ({
    header: headed(placed) + (set === 0 ? note : 0),
    least: 2,
    rows: table.rows.map((row, i) => ({
      height: rowHeight(table, row, placed, type),
      keep: row.group !== null && table.rows[i + 1]?.group === row.group,
      part: (from: number, to: number) => ({
        kind: 'table',
        table: index,
        from,
        to,
        placed,
        first: set === 0 && from === 0,
      }),
    })),
  }));
}

/** Height of the list of missing numbers, mm. */
function missingHeight(card: Card, content: number, type: TypeSize): number {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const face = { words: scale.note, numbers: scale.note };
  const text = card.missing.map((one) => one.meaning).join(' · ');
  return pitch.note * (1 + linesIn(words(text), face, content - 6)) + 4;
}

/** Heights of the lines at the foot: what left its band, then where the values come from. */
function sourceHeights(card: Card, content: number, type: TypeSize): number[] {
  const scale = TYPE_SCALES[type];
  const face = { words: scale.small, numbers: scale.small };
  const lines = [...card.exceeded.map((one) => one.text), ...card.sources];
  return lines.map((one) => linesIn(words(one), face, content - 4) * pitchesOf(type).small);
}
