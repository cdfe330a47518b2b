/** Rows of a result's table by the names of its columns. */
import type { Result } from '../../results/index.ts';

/**
 * The rows of a table as records.
 * @param result the result, or the part of it that has tables, object
 * @param name of the table, text
 * @returns one record a row; none where the result has no such table
 */
export function recordsOf(result: Pick<Result, 'tables'>, name: string): Record<string, unknown>[] {
  const table = result.tables.find((one) => one.name === name);
  if (!table) return [];
  return table.rows.map((row) => Object.fromEntries(table.columns.map((column, i) => [column.name, row[i] ?? null])));
}

/**
 * A number of a record.
 * @param record a row, or nothing
 * @param name of the column, text
 * @returns the number, null where there is none
 */
export function numberIn(record: Record<string, unknown> | undefined, name: string): number | null {
  const value = record?.[name];
  return typeof value === 'number' ? value : null;
}
