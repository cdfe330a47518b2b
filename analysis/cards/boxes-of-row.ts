/** Which boxes a row of a table has: a column read once a group has one only, on the group's first row. */
import type { Column, ReadingTable, Row } from './card.ts';

/**
 * Whether a row of a table has a box of its own in a column.
 * @param table the readings, object
 * @param row one of its rows, object
 * @param column one of its columns, object
 * @returns false where the box of the group's first row stands for it
 */
export function hasBox(table: Pick<ReadingTable, 'rows'>, row: Row, column: Pick<Column, 'perGroup'>): boolean {
  return !column.perGroup || row.group === null || firstOfGroup(table, row).key === row.key;
}

/**
 * The first row of a row's group: the one under whose key the group's own readings stand.
 * @param table the readings, object
 * @param row one of its rows, object
 * @returns the row itself where it stands in no group
 */
export function firstOfGroup(table: Pick<ReadingTable, 'rows'>, row: Row): Row {
  return row.group === null ? row : (table.rows.find((one) => one.group === row.group) ?? row);
}

/**
 * Key of a box, as it stands on paper and on the entry page.
 * @param table key of the table, text
 * @param row key of the row, or of the group where the group has the box, text
 * @param column key of the column, text; left out for the number written at the head of a group
 * @returns such as `t1.3-10.coolant-out`
 */
export function boxKey(table: string, row: string, column?: string): string {
  return column === undefined ? `${table}.${row}` : `${table}.${row}.${column}`;
}

/** Key, below the group's, of the minute at which it began. */
export const MINUTE = 'minute';
