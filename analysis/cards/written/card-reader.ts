/** What was written into the boxes of a card, found by table, row and reading. */
import { boxKey, firstOfGroup } from '../boxes-of-row.ts';
import type { Box, Card, ReadingTable, Row } from '../card.ts';
import type { BoxReading } from '../flown-card.ts';
import { plainText } from '../line.ts';

/** One number out of a box. */
export interface WrittenNumber {
  key: string;
  value: number;
  /** as a point says it: in the unit printed beside the box */
  stated: { value: number; unit: string };
}

export interface CardReader {
  card: Card;
  /** number in a row's box, by glossary name or key of its column; null where nothing is there */
  cell(table: ReadingTable, row: Row, reading: string): WrittenNumber | null;
  /** number in a single box, by glossary name or key */
  box(reading: string): WrittenNumber | null;
  /** number under any key, without a unit of its own; null where nothing is there */
  plain(key: string): number | null;
  /** setting of the configuration strip: as printed, or as set down by hand; empty where neither is there */
  setting(item: string): string;
  /** such as `flaps up, speed 2, leg 3` */
  place(table: ReadingTable, row: Row): string;
  /** what was written and is not a number, one sentence each */
  unread: string[];
}

/**
 * Read a card.
 * @param card as printed, object
 * @param readings what was written, by box, list
 * @returns the reader
 */
export function cardReader(card: Card, readings: readonly BoxReading[]): CardReader {
  const byKey = new Map(readings.filter((one) => one.text.trim() !== '').map((one) => [one.key, one]));
  const numberAt = (key: string, unit: string | null): WrittenNumber | null => {
    const value = byKey.get(key)?.value ?? null;
    return value === null || unit === null ? null : { key, value, stated: { value, unit } };
  };
  const isCalled = (one: { key: string; quantity: string | null }, reading: string) =>
    one.quantity === reading || one.key === reading;
  const numbered = [...card.boxes, ...card.log].filter((box) => box.write === 'number');
  return {
    card,
    cell: (table, row, reading) => {
      const column = table.columns.find((one) => one.write === 'number' && isCalled(one, reading));
      if (!column) return null;
      const owner = column.perGroup ? firstOfGroup(table, row) : row;
      return numberAt(boxKey(table.key, owner.key, column.key), column.unitId);
    },
    box: (reading) => {
      const box = numbered.find((one) => isCalled(one, reading));
      return box ? numberAt(box.key, box.unitId) : null;
    },
    plain: (key) => byKey.get(key)?.value ?? null,
    setting: (item) => {
      const cell = card.strip.find((one) => one.item === item);
      return cell ? plainText(cell.setting) || (byKey.get(`set.${item.replaceAll(' ', '-')}`)?.text ?? '') : '';
    },
    place: (table, row) => {
      const group = table.groups.find((one) => one.key === row.group);
      const head = [table.head.label, plainText(row.head), table.head.unit].filter(Boolean).join(' ');
      return [table.title, plainText(group?.head ?? []), head].filter(Boolean).join(', ');
    },
    unread: unreadNumbers(card, numbered, byKey),
  };
}

function unreadNumbers(card: Card, boxes: readonly Box[], byKey: ReadonlyMap<string, BoxReading>): string[] {
  const keys = new Set([
    ...boxes.map((one) => one.key),
    ...card.tables.flatMap((table) =>
      table.rows.flatMap((row) =>
        table.columns.flatMap((column) => (column.write === 'number' ? [boxKey(table.key, row.key, column.key)] : [])),
      ),
    ),
  ]);
  return [...byKey.values()].flatMap(({ key, text, value }) =>
    keys.has(key) && value === null ? [`“${text}” in ${key} is not a number.`] : [],
  );
}
