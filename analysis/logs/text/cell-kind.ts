/** A quick judgement of one cell, for finding header, units and first row. */
import { readClockCell } from '../clock/clock-cell.ts';
import { type Decimal, degreesIn, isMissingMark, numberIn, splitUnit } from './cell.ts';
import { isPlainFigure } from './plain-figure.ts';

export type CellKind = 'empty' | 'number' | 'clock' | 'degrees' | 'mark' | 'text';

/**
 * What a cell looks like.
 * @param text the cell as written, text
 * @param decimal decimal mark to try, text
 * @returns its kind
 */
export function cellKind(text: string, decimal: Decimal): CellKind {
  if (isPlainFigure(text, decimal)) return 'number';
  const cell = text.trim();
  if (cell === '') return 'empty';
  if (!Number.isNaN(numberIn(cell, decimal))) return 'number';
  if (readClockCell(cell)) return 'clock';
  if (!Number.isNaN(degreesIn(cell))) return 'degrees';
  if (isMissingMark(cell)) return 'mark';
  const split = splitUnit(cell);
  if (split && !Number.isNaN(numberIn(split.number, decimal))) return 'number';
  return 'text';
}

/** True where a cell can only be a reading, not a name or a unit. */
export function isReading(kind: CellKind): boolean {
  return kind === 'number' || kind === 'clock' || kind === 'degrees';
}
