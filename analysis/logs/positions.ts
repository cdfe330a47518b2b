/** Positions as recorders write them: degrees and minutes packed in one number, the hemisphere in the next column. */
import { nameWords } from './channels/name-words.ts';
import { type ColumnStore, changeNumbers, numbersOf } from './rows/column-store.ts';
import { allNumbers } from './rows/kept-numbers.ts';
import { fromDegreesMinutes } from './text/cell.ts';
import type { HeaderColumn } from './text/layout.ts';

interface Column {
  header: HeaderColumn;
  store: ColumnStore;
}

const MOST_DEGREES = { LAT: 90, LON: 180 } as const;

/**
 * Unpack a column of `dddmm.mmm`, told by its unit or by values no degree can have.
 * @param header the column, object; its unit becomes degrees
 * @param store its cells, object; changed
 */
export function packedDegrees(header: HeaderColumn, store: ColumnStore): void {
  const { words } = nameWords(header.name);
  const most = words.includes('LAT') ? MOST_DEGREES.LAT : words.includes('LON') ? MOST_DEGREES.LON : null;
  if (most === null || (store.kind !== 'number' && store.kind !== 'degrees')) return;
  const stated = /d{2,3}m{2}/i.test(header.unitText);
  if (store.kind === 'degrees') {
    if (stated) header.unitText = 'deg';
    return;
  }
  let beyond = 0;
  let there = 0;
  for (const value of allNumbers(numbersOf(store))) {
    if (Number.isNaN(value)) continue;
    there += 1;
    if (Math.abs(value) > most) beyond += 1;
  }
  if (there === 0 || !(stated || beyond > 0.9 * there)) return;
  changeNumbers(store, fromDegreesMinutes);
  header.unitText = 'deg';
}

/**
 * Columns of hemisphere letters beside a position.
 * @param columns the columns of the file in order
 * @returns one deed a pair: it gives south and west their sign
 */
export function withHemisphere(columns: readonly Column[]): { apply(): void }[] {
  return columns.flatMap(({ header, store }, i) => {
    const next = columns[i + 1]?.store;
    const { words } = nameWords(header.name);
    const letters = words.includes('LAT') ? ['N', 'S'] : words.includes('LON') ? ['E', 'W'] : null;
    if (!letters || !next || next.kind !== 'text' || store.kind !== 'number' || next.texts.length === 0) return [];
    if (!next.texts.every((text) => letters.includes(text.toUpperCase()))) return [];
    const negative = next.texts.map((text) => text.toUpperCase() === letters[1]);
    const apply = () => {
      changeNumbers(store, (value, row) => (negative[next.first[row] ?? -1] ? -Math.abs(value) : value));
    };
    return [{ apply }];
  });
}
