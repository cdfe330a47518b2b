/** What parts the cells of a file: tried on its lines, judged by how evenly and how well rows of readings come out. */

import type { Decimal } from './cell.ts';
import { cellKind, isReading } from './cell-kind.ts';
import { cutLine, type Delimiter, splitLine } from './split-line.ts';

export interface Parted {
  delimiter: Delimiter;
  decimal: Decimal;
  decimalOpen: boolean;
  /** numbers with a comma in them, count */
  commas: number;
  cuts: number[];
  /** cells of a row of readings */
  width: number;
  /** how well and evenly the lines from the first row on come out, 0 to 1 */
  score: number;
  /** how many lines come out so */
  amount: number;
}

/** Fewer good lines than this share are no table. */
const LEAST_SCORE = 0.25;
const WRITTEN: readonly Delimiter[] = [',', ';', '\t', '|'];

/**
 * The delimiter and decimal mark of a file.
 * @param lines lines of the head, texts
 * @returns how cells are parted, or null when no way gives rows of readings
 */
export function findDelimiter(lines: readonly string[]): Parted | null {
  const sample = lines.length > 400 ? [...lines.slice(0, 100), ...lines.slice(-300)] : lines;
  const tries: Parted[] = [];
  for (const delimiter of WRITTEN) {
    if (!sample.some((line) => line.includes(delimiter))) continue;
    for (const decimal of ['.', ','] as const) {
      // A comma can be both only where the cells stand in quotes.
      if (decimal === ',' && delimiter === ',' && !sample.some((line) => line.includes('"'))) continue;
      tries.push(judge(sample, delimiter, decimal, []));
    }
  }
  const best = pick(tries);
  if (best && best.score > 0.9) return best;
  const blank = trySpaces(sample);
  if (blank && blank.amount > (best?.amount ?? 0) && blank.score > LEAST_SCORE) return blank;
  return best && best.score > LEAST_SCORE ? best : null;
}

function pick(tries: Parted[]): Parted | null {
  let best: Parted | null = null;
  for (const one of tries) if (!best || one.amount > best.amount + 1e-9) best = one;
  if (!best) return null;
  const { delimiter, amount } = best;
  const rival = tries.find((one) => one !== best && one.delimiter === delimiter);
  const even = rival !== undefined && Math.abs(rival.amount - amount) < 1e-9;
  // Every comma with three figures behind it: thousands where commas part the cells, and anyone's guess elsewhere.
  return { ...best, decimalOpen: even && best.commas > 0 && delimiter !== ',' };
}

function judge(lines: readonly string[], delimiter: Delimiter, decimal: Decimal, cuts: number[]): Parted {
  const rows: LineShape[] = [];
  let commas = 0;
  for (const line of lines) {
    if (line.trim() === '') continue;
    const cells = splitLine(line, delimiter, cuts);
    let readings = 0;
    let filled = 0;
    for (const cell of cells.length > 300 ? cells.slice(0, 300) : cells) {
      const kind = cellKind(cell, decimal);
      if (kind === 'empty' || kind === 'mark') continue;
      filled++;
      if (isReading(kind)) {
        readings++;
        if (kind === 'number' && cell.includes(',')) commas++;
      }
    }
    rows.push({ cells: cells.length, readings, filled });
  }
  const width = usualWidth(rows);
  let sum = 0;
  let from = rows.length;
  rows.forEach((row, i) => {
    if (!isRowOfReadings(row)) return;
    if (row.cells === width) from = Math.min(from, i);
    const fit = row.cells === width ? 1 : Math.abs(row.cells - width) <= 1 ? 0.6 : 0.2;
    sum += fit * (row.readings / Math.max(1, row.filled));
  });
  const worth = width >= 2 ? 1 - 0.5 / width : 0;
  // A preamble of any length is no fault of the rows below it.
  const score = (worth * sum) / Math.max(1, rows.length - from);
  return { delimiter, decimal, decimalOpen: false, commas, cuts, width, score, amount: worth * sum };
}

interface LineShape {
  cells: number;
  readings: number;
  filled: number;
}

const isRowOfReadings = (row: LineShape) => row.readings > 0 && row.readings * 2 >= row.filled;

function usualWidth(rows: readonly LineShape[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) if (isRowOfReadings(row)) counts.set(row.cells, (counts.get(row.cells) ?? 0) + 1);
  let width = 0;
  let most = 0;
  for (const [cells, count] of counts) {
    if (count > most || (count === most && cells > width)) {
      most = count;
      width = cells;
    }
  }
  return width;
}

/** Columns parted by blanks: by words when every row has as many, else by the columns of letters that stay blank. */
function trySpaces(lines: readonly string[]): Parted | null {
  const tries: Parted[] = [];
  for (const decimal of ['.', ','] as const) {
    const words = judge(lines, 'spaces', decimal, []);
    const rows = rowsOf(lines, decimal);
    const even = rows.filter((row) => row.trim().split(/\s+/).length === words.width).length;
    if (words.width >= 2 && rows.length > 0 && even === rows.length) {
      // Names of two words need the columns of letters as well.
      const cuts = rows.length >= 3 ? findCuts(rows) : [];
      tries.push({ ...words, cuts: cuts.length + 1 === words.width ? cuts : [] });
    } else if (rows.length >= 3) {
      const cuts = findCuts(rows);
      if (cuts.length > 0) tries.push(judge(lines, 'fixed', decimal, cuts));
    }
  }
  return pick(tries);
}

function rowsOf(lines: readonly string[], decimal: Decimal): string[] {
  return lines.filter((line) => {
    const words = line.trim().split(/\s+/);
    const readings = words.filter((word) => isReading(cellKind(word, decimal))).length;
    return words.length >= 2 && readings * 2 >= words.length;
  });
}

function findCuts(rows: readonly string[]): number[] {
  const length = Math.max(...rows.map((row) => row.length));
  if (length > 4000) return [];
  const blank: boolean[] = [];
  for (let i = 0; i < length; i++) blank.push(rows.every((row) => (row[i] ?? ' ') === ' '));
  const cuts: number[] = [];
  let i = 0;
  while (i < length && blank[i]) i++;
  while (i < length) {
    while (i < length && !blank[i]) i++;
    const from = i;
    while (i < length && blank[i]) i++;
    if (i >= length) break;
    // Right-aligned columns grow to the left, so they are cut where the one before ends; left-aligned ones at their start.
    const endsEven = share(rows, from - 1) >= share(rows, i);
    cuts.push(endsEven ? from : i);
  }
  return cuts.length > 0 && rows.every((row) => cutLine(row, cuts).length === cuts.length + 1) ? cuts : [];
}

function share(rows: readonly string[], at: number): number {
  return rows.filter((row) => (row[at] ?? ' ') !== ' ').length / rows.length;
}
