/**
 * The entry page of a card: one field for each box, in the order of the card, with what the box expects and what can be
 * at all. Built from the same data as the paper, so that hand and eye find the same places.
 */
import { fromSi, quantityOf } from '../units/index.ts';
import { boxKey, hasBox, MINUTE } from './boxes-of-row.ts';
import type { Box, Card, Column, Expectation, ReadingTable, RowGroup, Write } from './card.ts';
import { plainText } from './line.ts';

export interface EntryField {
  /** key of the box on the paper: `t1.3-10.coolant-out`, or the key of a single box */
  key: string;
  /** what is read */
  label: string;
  /** where it is read: group and row head; empty for a single box */
  at: string;
  unit: string;
  unitId: string | null;
  quantity: string | null;
  input: Write;
  digits: number;
  expect: Expectation | null;
  /** range outside which a reading is a slip of the pen or of the unit, in the unit of the box */
  plausible: [number, number] | null;
}

export interface EntryRow {
  key: string;
  head: string;
  group: string;
  /** rows of its group, on the first of them; else 0 */
  opens: number;
  /** what is set down at the head of its group, on the group's first row */
  groupFields: EntryField[];
  /** by column; null where the box of the group's first row stands for it */
  cells: (EntryField | null)[];
  /** all fields of the row that are there */
  fields: EntryField[];
}

export interface EntryTable {
  key: string;
  title: string;
  head: { label: string; unit: string };
  groupHead: { label: string; unit: string };
  columns: Pick<Column, 'key' | 'label' | 'unit' | 'perGroup' | 'expect'>[];
  rows: EntryRow[];
}

export interface EntryPage {
  card: string;
  title: string;
  /** the configuration held: what the paper leaves to be set down */
  strip: EntryField[];
  tables: EntryTable[];
  boxes: EntryField[];
  /** every field in the order it is tabbed through: configuration, tables by row, then boxes, clock and fuel */
  order: string[];
}

/**
 * The fields of a card's entry page.
 * @param card the card as printed, object
 * @returns tables and boxes, and the order of the fields
 */
export function entryFields(card: Card): EntryPage {
  const strip = card.strip.flatMap(({ item, setting }) => (setting.length === 0 ? [settingField(item)] : []));
  const tables = card.tables.map(entryTable);
  const boxes = [...card.boxes, ...card.log].map((box) => fieldOf(box, box.key, '', box.expect));
  const rows = tables.flatMap((table) => table.rows.flatMap((row) => row.fields));
  return {
    card: card.id,
    title: card.title,
    strip,
    tables,
    boxes,
    order: [...strip, ...rows, ...boxes].map((one) => one.key),
  };
}

/**
 * Every field of a card, in the order they are tabbed through.
 * @param page the entry page, object
 * @returns fields
 */
export function allFields(page: EntryPage): EntryField[] {
  return [...page.strip, ...page.tables.flatMap((table) => table.rows.flatMap((row) => row.fields)), ...page.boxes];
}

/**
 * Key of a setting of the configuration strip that is set down by hand.
 * @param item its item, text
 * @returns such as `set.door`
 */
export function settingKey(item: string): string {
  return `set.${item.replaceAll(' ', '-')}`;
}

function settingField(item: string): EntryField {
  return { ...NO_RANGE, key: settingKey(item), label: item, at: 'configuration', unit: '', input: 'words', digits: 0 };
}

const NO_RANGE = { unitId: null, quantity: null, expect: null, plausible: null };

function entryTable(table: ReadingTable): EntryTable {
  return {
    key: table.key,
    title: table.title,
    head: table.head,
    groupHead: { label: table.groupHead.label, unit: table.groupHead.unit },
    columns: table.columns.map(({ key, label, unit, perGroup, expect }) => ({ key, label, unit, perGroup, expect })),
    rows: table.rows.map((row, i) => {
      const group = table.groups.find((one) => one.key === row.group);
      const opens = group && table.rows[i - 1]?.group !== row.group;
      const words = plainText(group?.head ?? []);
      const head = plainText(row.head);
      const said = (...parts: string[]) => parts.filter(Boolean).join(', ');
      const at = said(table.title, words, [head, table.head.unit].filter(Boolean).join(' '));
      const groupFields = opens ? fieldsOfGroup(table, group, said(table.title, words)) : [];
      const cells = table.columns.map((column) =>
        hasBox(table, row, column)
          ? fieldOf(
              column,
              boxKey(table.key, row.key, column.key),
              column.perGroup && group ? said(table.title, words) : at,
              row.cells[column.key]?.expect ?? column.expect,
            )
          : null,
      );
      return {
        key: row.key,
        head,
        group: words,
        opens: opens ? table.rows.filter((one) => one.group === row.group).length : 0,
        groupFields,
        cells,
        fields: [...groupFields, ...cells.flatMap((one) => one ?? [])],
      };
    }),
  };
}

function fieldsOfGroup(table: ReadingTable, group: RowGroup, at: string): EntryField[] {
  const { label, unit, write, minute } = table.groupHead;
  const number = { ...NO_RANGE, at, input: 'number' as const };
  return [
    ...(write ? [{ ...number, key: boxKey(table.key, group.key), label, unit, digits: 3 }] : []),
    ...(minute
      ? [{ ...number, key: boxKey(table.key, group.key, MINUTE), label: 'began at', unit: 'min', digits: 2, ...HOUR }]
      : []),
  ];
}

const HOUR: Pick<EntryField, 'plausible'> = { plausible: [0, 59] };

function fieldOf(box: Column | Box, key: string, at: string, expect: Expectation | null): EntryField {
  const { label, unit, unitId, quantity, write, digits } = box;
  return { key, label, at, unit, unitId, quantity, input: write, digits, expect, plausible: plausibleFor(box) };
}

/** Differences (a dip, a height lost) share a glossary name with the reading they are taken from, not its range. */
const DIFFERENCE = /change|dip|lost|loss|shift|drop|swing|overshoot|jump|error|rise|fall|margin|return/;

function plausibleFor({ quantity, unitId, label }: Column | Box): [number, number] | null {
  const glossary = quantity ? quantityOf(quantity) : undefined;
  if (!glossary || unitId === null || DIFFERENCE.test(label)) return null;
  const [low, high] = glossary.plausible;
  return [fromSi(low, unitId), fromSi(high, unitId)];
}
