/** What nearly every cell of a log is, told without a look at its grammar: figures, one mark, one sign. */
import type { Decimal } from './cell.ts';

const MOST_LETTERS = 15;

/**
 * True for a number such as `-12.34` and nothing else; other numbers are told by their grammar.
 * @param cell the cell as written, text
 * @param decimal decimal mark of the file, text
 * @returns whether it is one
 */
export function isPlainFigure(cell: string, decimal: Decimal): boolean {
  const { length } = cell;
  if (length > MOST_LETTERS) return false;
  const mark = decimal.charCodeAt(0);
  let figures = 0;
  let marks = 0;
  for (let i = cell.charCodeAt(0) === 45 ? 1 : 0; i < length; i += 1) {
    const letter = cell.charCodeAt(i);
    if (letter >= 48 && letter <= 57) figures += 1;
    else if (letter === mark && figures > 0) marks += 1;
    else return false;
  }
  return figures > 0 && marks <= 1;
}
