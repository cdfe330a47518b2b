import type { Cell, Result } from '../../../../analysis/results/index.ts';

/** Rows of a table by column name; none where the result has no such table. */
export function rowsNamed(result: Pick<Result, 'tables'>, name: string): Record<string, Cell>[] {
  const table = result.tables.find((one) => one.name === name);
  if (!table) return [];
  return table.rows.map((row) => Object.fromEntries(table.columns.map((column, i) => [column.name, row[i] ?? null])));
}
