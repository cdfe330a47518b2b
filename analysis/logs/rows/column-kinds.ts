/** What each column holds, from the first rows: numbers, times, states, texts. */
import { type Decimal, isMissingMark, splitUnit } from '../text/cell.ts';
import { type ColumnKind, kindOf } from './column-store.ts';

export interface HeadKind {
  kind: ColumnKind;
  /** unit behind the numbers of the column, or empty */
  suffix: string;
  /** the head has no cell to tell */
  undecided: boolean;
  /** the first cell of the commonest kind, as written */
  example: string;
}

/**
 * Kind of each column.
 * @param rows cells of the first rows, texts
 * @param columns columns of the file, count
 * @param decimal decimal mark of the file, text
 * @returns one kind a column
 */
export function columnKinds(rows: readonly (readonly string[])[], columns: number, decimal: Decimal): HeadKind[] {
  return Array.from({ length: columns }, (_, c) => {
    const counts = new Map<ColumnKind, number>();
    const suffixes = new Map<string, number>();
    const examples = new Map<ColumnKind, string>();
    for (const row of rows) {
      const cell = (row[c] ?? '').trim();
      if (cell === '' || isMissingMark(cell)) continue;
      const kind = kindOf(cell, decimal);
      counts.set(kind, (counts.get(kind) ?? 0) + 1);
      if (!examples.has(kind)) examples.set(kind, cell);
      const unit = kind === 'number' ? splitUnit(cell)?.unit : undefined;
      if (unit !== undefined) suffixes.set(unit, (suffixes.get(unit) ?? 0) + 1);
    }
    const kind = commonest(counts);
    // A state column may show 0 and 1 beside its words, a position may lose its letter.
    const numbers = counts.get('number') ?? 0;
    const positions = counts.get('degrees') ?? 0;
    const worded = kind === 'number' && positions > 1 && positions > 0.3 * numbers ? 'degrees' : kind;
    const example = kind === undefined ? '' : (examples.get(kind) ?? '');
    // A unit behind one number of many is a fault of that cell, not the unit of the column.
    const unit = commonest(suffixes);
    const suffix = unit !== undefined && (suffixes.get(unit) ?? 0) > 0.5 * numbers ? unit : '';
    return { kind: worded ?? 'number', suffix, undecided: kind === undefined, example };
  });
}

function commonest<K>(counts: ReadonlyMap<K, number>): K | undefined {
  let best: K | undefined;
  for (const [key, count] of counts) if (best === undefined || count > (counts.get(best) ?? 0)) best = key;
  return best;
}
