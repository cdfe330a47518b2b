/** Tables and boxes of a sheet, ready to print. */
import type {
  Box,
  Card,
  CardCell,
  Column,
  MeasuredText,
  ReadingTable,
  Row,
  SheetPart,
} from '../../analysis/cards/index.ts';
import {
  boxKey,
  boxLabelWidth,
  boxRows,
  firstOfGroup,
  hasBox,
  MEASURES_MM,
  MINUTE,
  type PlacedColumns,
  rowHeight,
  singleBoxWidth,
  type TypeSize,
} from '../../analysis/cards/index.ts';
import { lineParts, type TokenPart } from './line.view.ts';
import type { PrintOptions } from './options.ts';

/** a date or a name, mm */
const LOG_WORDS = 40;

/** Shapes of a value above and below its band. */
export const MARKS = { above: '▲', below: '▼' } as const;

interface CellView {
  kind: string;
  key: string;
  /** rows it stands over, where more than one */
  span: string;
  text: string;
  mark: string;
  source: string;
}

/**
 * A table part of a sheet.
 * @param card the card, object
 * @param part which rows and columns, object
 * @param options the person's choices, object
 * @returns view of cards/_reading-table
 */
export function tableView(card: Card, part: Extract<SheetPart, { kind: 'table' }>, options: PrintOptions) {
  const table = card.tables[part.table];
  if (!table) throw new RangeError(`card ${card.id} has no table ${part.table}`);
  const { placed } = part;
  const left = options.hand === 'left';
  const columns = placed.columns.flatMap(({ column, write, expect }) => {
    const one = table.columns[column];
    return one ? [{ one, write, expect }] : [];
  });
  const widths = columns.flatMap(({ write, expect }) =>
    expect === 0 ? [write] : left ? [write, expect] : [expect, write],
  );
  const rows = table.rows.slice(part.from, part.to);
  const each = Math.ceil(rows.length / placed.blocks);
  const tall = placed.blocks > 1 ? Math.max(...rows.map((row) => rowHeight(table, row, placed, options.type))) : 0;
  const rowView = (row: Row, i: number) => {
    const opens = row.group !== null && (i === 0 || rows[i - 1]?.group !== row.group);
    const rowsOfGroup = rows.filter((other) => other.group === row.group).length;
    return {
      height: millimetres(Math.max(tall, rowHeight(table, row, placed, options.type))),
      opens,
      span: rowsOfGroup,
      group: opens ? groupLines(table, row.group) : [],
      ...groupBoxes(table, row),
      head: lineParts(row.head),
      cells: columns.flatMap(({ one }) => {
        if (hasBox(table, row, one)) {
          const span = one.perGroup && row.group !== null ? rowsOfGroup : 1;
          return cellViews(one, row.cells[one.key], boxKey(table.key, row.key, one.key), left, span);
        }
        // a group goes on after a cut: what was read once for it stands before the cut
        return opens ? cellViews(one, undefined, '', left, rowsOfGroup) : [];
      }),
    };
  };
  return {
    template: 'cards/_reading-table',
    title: table.title,
    note: part.first && part.table === 0 ? card.expectNote : '',
    grouped: table.groups.length > 0,
    groupHead: table.groupHead,
    widths: [...(table.groups.length > 0 ? [placed.group] : []), placed.head, ...widths].map(millimetres),
    headHeight: millimetres(placed.headHeight),
    expectHeight: millimetres(placed.expectHeight),
    head: table.head,
    expected: placed.expectHeight > 0,
    columns: columns.map(({ one }) => ({
      label: one.label,
      unit: one.unit,
      twin: one.expectsByRow,
      pair: left ? ['read', 'expect'] : ['expect', 'read'],
      expect: one.expect?.text ?? '',
    })),
    blocks: Array.from({ length: placed.blocks }, (_, b) => ({
      width: millimetres(widthOf(placed)),
      rows: rows.map(rowView).slice(b * each, (b + 1) * each),
    })),
  };
}

function widthOf(placed: PlacedColumns): number {
  const columns = placed.columns.reduce((sum, one) => sum + one.write + one.expect, 0);
  return placed.group + placed.head + columns + MEASURES_MM.line;
}

function groupLines(table: ReadingTable, key: string | null): TokenPart[] {
  return lineParts(table.groups.find((group) => group.key === key)?.head ?? []);
}

/** What is written at the head of a group, and what already is. */
export function groupBoxes(table: ReadingTable, row: Row) {
  const { write, minute } = table.groupHead;
  // where a group goes on after a cut, its boxes stand before the cut
  const own = firstOfGroup(table, row).key === row.key;
  const group = own ? table.groups.find((one) => one.key === row.group) : undefined;
  const read = (one: MeasuredText | null) => measuredView(one).text;
  return {
    write,
    aim: group && write ? boxKey(table.key, group.key) : '',
    aimed: read(group?.measured ?? null),
    minute: group && minute ? boxKey(table.key, group.key, MINUTE) : '',
    began: read(group?.began ?? null),
  };
}

function cellViews(column: Column, cell: CardCell | undefined, key: string, left: boolean, rows: number): CellView[] {
  const span = rows > 1 ? String(rows) : '';
  const beside = column.expectsByRow ? (left ? ' before-expect' : ' after-expect') : '';
  const read = { kind: `read write-${column.write}${beside}`, key, span, ...measuredView(cell?.measured ?? null) };
  if (!column.expectsByRow) return [read];
  const expect = {
    kind: left ? 'expect-last' : 'expect-first',
    key: '',
    span,
    text: cell?.expect?.text ?? '',
    mark: '',
    source: '',
  };
  return left ? [read, expect] : [expect, read];
}

/** What a box prints once it has been read. */
export function measuredView(measured: MeasuredText | null) {
  return {
    text: measured?.text ?? '',
    mark: measured?.outside ? MARKS[measured.outside] : '',
    source: measured?.source ? String(measured.source) : '',
  };
}

/** A part of labelled boxes. */
export function boxesView(card: Card, from: number, to: number, content: number, options: PrintOptions) {
  const rows = boxRows(card.boxes, content, options.type).filter((row) => row.from >= from && row.to <= to);
  return {
    template: 'cards/_boxes',
    rows: rows.map((row) => ({
      height: millimetres(row.height),
      boxes: card.boxes.slice(row.from, row.to).map((box) => ({
        ...boxView(box, boxSize(box, content, options.type)),
        wide: box.write === 'words',
        expect: box.expect ? `${box.expect.text} ${box.unit}` : '',
      })),
    })),
  };
}

/** The clock and fuel boxes of the last sheet. */
export function logView(card: Card, options: PrintOptions) {
  return {
    template: 'cards/_log',
    boxes: card.log.map((box) => {
      const width = box.write === 'words' ? LOG_WORDS : singleBoxWidth(box, options.type);
      return boxView(box, `width:${millimetres(width)}mm`);
    }),
  };
}

function boxView(box: Box, size: string) {
  return { key: box.key, label: box.label, unit: box.unit, write: box.write, size, ...measuredView(box.measured) };
}

function boxSize(box: Box, content: number, type: TypeSize): string {
  if (box.write === 'words') return `max-width:${millimetres(content - boxLabelWidth(box, content, type))}mm`;
  return `width:${millimetres(singleBoxWidth(box, type))}mm`;
}

export function millimetres(value: number): string {
  return value.toFixed(2);
}
