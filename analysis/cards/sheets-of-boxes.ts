/** On which sheet of a printed card each box stands: the way back from a figure to the paper it was written on. */
import { boxKey, firstOfGroup, hasBox, MINUTE } from './boxes-of-row.ts';
import type { Card, ReadingTable, Row } from './card.ts';
import type { PlacedColumns } from './column-widths.ts';
import { settingKey } from './entry-fields.ts';
import type { Paper, TypeSize } from './sheet-size.ts';
import { sheetsOf } from './sheets.ts';

/**
 * The sheet of each box.
 * @param card as printed, object
 * @param paper it was printed on, text
 * @param type type size, text
 * @returns number of the sheet by key of the box
 */
export function sheetsOfBoxes(card: Card, paper: Paper, type: TypeSize = 'normal'): Map<string, number> {
  const places = new Map<string, number>(card.strip.map(({ item }) => [settingKey(item), 1]));
  for (const sheet of sheetsOf(card, paper, type)) {
    const put = (key: string) => {
      if (!places.has(key)) places.set(key, sheet.number);
    };
    for (const part of sheet.parts) {
      if (part.kind === 'log') for (const box of card.log) put(box.key);
      if (part.kind === 'boxes') for (const box of card.boxes.slice(part.from, part.to)) put(box.key);
      const table = part.kind === 'table' || part.kind === 'turned' ? card.tables[part.table] : undefined;
      if (!table) continue;
      if (part.kind === 'table')
        for (const row of table.rows.slice(part.from, part.to)) keysOf(table, row, part.placed).forEach(put);
      if (part.kind === 'turned')
        for (const { from, to } of part.turned.blocks)
          for (const row of table.rows.slice(from, to)) keysOf(table, row, null).forEach(put);
    }
  }
  return places;
}

function keysOf(table: ReadingTable, row: Row, placed: PlacedColumns | null): string[] {
  const columns = placed ? placed.columns.flatMap(({ column }) => table.columns[column] ?? []) : table.columns;
  const group = row.group !== null && firstOfGroup(table, row).key === row.key ? row.group : null;
  return [
    ...(group === null ? [] : [boxKey(table.key, group), boxKey(table.key, group, MINUTE)]),
    ...columns.flatMap((column) => (hasBox(table, row, column) ? [boxKey(table.key, row.key, column.key)] : [])),
  ];
}
