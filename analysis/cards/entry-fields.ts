/**
 * The entry page of a card: one field for each box, in the order of the card, with what the box expects and what can be
 * at all. Built from the same data as the paper, so that hand and eye find the same places.
 */
import { fromSi, quantityOf } from '../units/index.ts';
import type { Box, Card, Column, Expectation, Write } from './card.ts';
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

export interface EntryTable {
  key: string;
  title: string;
  head: { label: string; unit: string };
  columns: Pick<Column, 'key' | 'label' | 'unit'>[];
  rows: { key: string; head: string; group: string; fields: EntryField[] }[];
}

export interface EntryPage {
  card: string;
  title: string;
  tables: EntryTable[];
  boxes: EntryField[];
  /** every field in the order it is tabbed through: tables by row, then boxes, then the clock and fuel */
  order: string[];
}

/**
 * The fields of a card's entry page.
 * @param card the card as printed, object
 * @returns tables and boxes, and the order of the fields
 */
export function entryFields(card: Card): EntryPage {
  const tables = card.tables.map((table) => ({
    key: table.key,
    title: table.title,
    head: table.head,
    columns: table.columns.map(({ key, label, unit }) => ({ key, label, unit })),
    rows: table.rows.map((row) => {
      const group = plainText(table.groups.find((one) => one.key === row.group)?.head ?? []);
      const head = plainText(row.head);
      const at = [table.title, group, [head, table.head.unit].filter(Boolean).join(' ')].filter(Boolean).join(', ');
      return {
        key: row.key,
        head,
        group,
        fields: table.columns.map((column) =>
          fieldOf(column, `${table.key}.${row.key}.${column.key}`, at, row.cells[column.key]?.expect ?? column.expect),
        ),
      };
    }),
  }));
  const boxes = [...card.boxes, ...card.log].map((box) => fieldOf(box, box.key, '', box.expect));
  const order = [...tables.flatMap((table) => table.rows.flatMap((row) => row.fields)), ...boxes].map((one) => one.key);
  return { card: card.id, title: card.title, tables, boxes, order };
}

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
