/** Which columns hold numbers and which texts, from the first rows. Times stay texts until the clock reads them. */

import { stateIn } from '../text/cell.ts';
import { cellKind } from '../text/cell-kind.ts';
import { headLines } from '../text/head-lines.ts';
import type { Layout } from '../text/layout.ts';
import { splitLine } from '../text/split-line.ts';
import type { ColumnKind } from './column-store.ts';

const ROWS = 400;

/**
 * Kind of each column.
 * @param text head of the file
 * @param layout how it is built
 * @returns `number` or `text`, one a column
 */
export function columnKinds(text: string, layout: Layout): ColumnKind[] {
  const rows = headLines(text, false)
    .filter((one) => one.line >= layout.firstRowLine && one.text.trim() !== '')
    .slice(0, ROWS)
    .map((one) => splitLine(one.text, layout.delimiter, layout.cuts));
  return layout.columns.map((_, c) => {
    let numbers = 0;
    let texts = 0;
    for (const row of rows) {
      const cell = row[c] ?? '';
      const kind = cellKind(cell, layout.decimal);
      if (kind === 'empty' || kind === 'mark') continue;
      if (kind === 'number' || kind === 'degrees' || !Number.isNaN(stateIn(cell))) numbers += 1;
      else texts += 1;
    }
    return numbers >= texts ? 'number' : 'text';
  });
}
