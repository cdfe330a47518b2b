/** The first row of readings: the first line built like the rows further down, wherever it stands. */
import { cellKind, isReading } from './cell-kind.ts';
import type { Parted } from './find-delimiter.ts';
import type { HeadLine } from './head-lines.ts';
import { splitLine } from './split-line.ts';

/** What most rows have in a column: readings, texts, or now this, now that. */
type Built = 'reading' | 'text' | null;

const ROWS_FOR_PATTERN = 60;
const AGREE = 0.8;

export interface FoundRows {
  /** place of the first row among the lines, count */
  first: number;
  /** all lines from there on that are rows */
  rows: string[];
}

/**
 * Find the rows of readings in the head.
 * @param lines lines of the head
 * @param parted how cells are parted, object
 * @returns the first row and those that follow, or null where there are none
 */
export function findRows(lines: readonly HeadLine[], parted: Parted): FoundRows | null {
  const shapes = lines.map((one) => shapeOf(one.text, parted));
  const likely = shapes.filter((shape) => shape !== null && shape.readings > 0 && shape.readings * 2 >= shape.filled);
  const pattern = patternOf(likely.flatMap((shape) => (shape ? [shape] : [])).slice(-ROWS_FOR_PATTERN));
  const isRow = shapes.map(
    (shape) => shape !== null && shape.readings > 0 && agrees(shape.built, pattern, parted.width),
  );
  const first = isRow.findIndex((row, i) => {
    if (!row) return false;
    let next = 0;
    let rows = 0;
    for (let k = i + 1; k < lines.length && next < 8; k++) {
      if ((lines[k]?.text.trim() ?? '') === '') continue;
      next += 1;
      if (isRow[k]) rows += 1;
    }
    return rows * 2 >= next;
  });
  if (first < 0) return null;
  return { first, rows: lines.flatMap((one, i) => (i >= first && isRow[i] ? [one.text] : [])) };
}

interface Shape {
  built: Built[];
  readings: number;
  filled: number;
}

function shapeOf(line: string, parted: Parted): Shape | null {
  if (line.trim() === '' || /^\s*(#|\/\/|%|!)/.test(line)) return null;
  const built = splitLine(line, parted.delimiter, parted.cuts).map((cell): Built => {
    const kind = cellKind(cell, parted.decimal);
    return kind === 'empty' || kind === 'mark' ? null : isReading(kind) ? 'reading' : 'text';
  });
  const filled = built.filter((one) => one !== null).length;
  return { built, filled, readings: built.filter((one) => one === 'reading').length };
}

function patternOf(shapes: readonly Shape[]): Built[] {
  const width = Math.max(0, ...shapes.map((shape) => shape.built.length));
  return Array.from({ length: width }, (_, c) => {
    const readings = shapes.filter((shape) => shape.built[c] === 'reading').length;
    const texts = shapes.filter((shape) => shape.built[c] === 'text').length;
    if (readings >= 0.7 * (readings + texts) && readings > 0) return 'reading';
    return texts >= 0.7 * (readings + texts) && texts > 0 ? 'text' : null;
  });
}

function agrees(built: readonly Built[], pattern: readonly Built[], width: number): boolean {
  if (width <= 3 ? built.length < width : built.length < AGREE * width) return false;
  let told = 0;
  let same = 0;
  built.forEach((one, c) => {
    const usual = pattern[c] ?? null;
    if (one === null || usual === null) return;
    told += 1;
    if (one === usual) same += 1;
  });
  return told > 0 && same >= AGREE * told;
}
