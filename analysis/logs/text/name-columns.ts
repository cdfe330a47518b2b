/** Columns with names that are told apart, and the unit each states. */
import { splitHeader } from '../channels/header-text.ts';
import type { HeaderColumn } from './layout.ts';

/**
 * Name the columns of a file.
 * @param names header texts, empty where a column has none
 * @param units cells of the units row, texts
 * @param others cells of a second units row, texts
 * @param width columns, count
 * @returns the columns, and the header texts that stood more than once
 */
export function nameColumns(
  names: readonly string[],
  units: readonly string[],
  others: readonly string[],
  width: number,
): { columns: HeaderColumn[]; duplicates: string[] } {
  const taken = new Set<string>();
  const times = new Map<string, number>();
  const duplicates: string[] = [];
  const columns: HeaderColumn[] = [];
  for (let index = 0; index < width; index++) {
    const text = (names[index] ?? '').trim().replace(/\s+/g, ' ') || `Column ${index + 1}`;
    let count = (times.get(text) ?? 0) + 1;
    if (count === 2) duplicates.push(text);
    while (taken.has(count === 1 ? text : `${text}#${count}`)) count += 1;
    times.set(text, count);
    const column = count === 1 ? text : `${text}#${count}`;
    taken.add(column);
    const split = splitHeader(text);
    const below = (units[index] ?? '').trim();
    const second = (others[index] ?? '').trim();
    columns.push({
      column,
      index,
      name: split.name,
      unitText: below || split.unitText || second,
      otherUnitText: below ? split.unitText || second : split.unitText ? second : '',
    });
  }
  return { columns, duplicates };
}
