/** Header, units row and first row of readings, found wherever they stand. */

import { splitHeader } from '../channels/header-text.ts';
import { nameScore } from '../channels/name-score.ts';
import { isUnitText } from '../channels/unit-text.ts';
import { cellKind, isReading } from './cell-kind.ts';
import type { Encoding } from './encoding.ts';
import { findDelimiter, type Parted } from './find-delimiter.ts';
import { type HeadLine, headLines } from './head-lines.ts';
import type { HeaderColumn, Layout } from './layout.ts';
import { splitLine } from './split-line.ts';

export const MAX_COLUMNS = 4096;
const BLOCK_LINES = 8;

/** A line of the header block with its cells. */
interface BlockLine extends HeadLine {
  cells: string[];
  units: number;
  names: number;
  filled: number;
}

/**
 * How a file is built, from its head.
 * @param text head of the file as text
 * @param complete true when the head is the whole file
 * @param encoding encoding of the file, text
 * @returns the layout, or null when no rows of readings were found in the head
 */
export function findLayout(text: string, complete: boolean, encoding: Encoding): Layout | null {
  const lines = headLines(text, complete);
  const parted = findDelimiter(lines.map((one) => one.text));
  if (!parted) return null;
  const first = firstRow(lines, parted);
  if (first < 0) return null;
  const block = headerBlock(lines, first, parted);
  const header = pickHeader(block);
  const units = pickUnits(block, header);
  const other = block.find((one) => one !== header && one !== units && one.units >= 0.6);
  const above = header ? groupLine(block, header, units) : undefined;
  const used = new Set([header, units, other, above].filter((one) => one !== undefined));
  const firstUsed = Math.min(...[...used].map((one) => one?.line ?? Number.POSITIVE_INFINITY), lines[first]?.line ?? 1);
  const headerCells = header ? mergeGroups(header.cells, above?.cells) : [];
  const rowCells = splitLine(lines[first]?.text ?? '', parted.delimiter, parted.cuts);
  const width = Math.max(parted.width, lastFilled(headerCells));
  const trailing =
    parted.width === width && (rowCells.at(-1) ?? '').trim() === '' && isTrailing(lines, first, parted, headerCells);
  const columns = nameColumns(headerCells, units?.cells ?? [], other?.cells ?? [], trailing ? width - 1 : width);
  return {
    encoding,
    delimiter: parted.delimiter,
    decimal: parted.decimal,
    decimalOpen: parted.decimalOpen,
    headerLine: header?.line ?? null,
    unitsLine: units?.line ?? null,
    firstRowLine: lines[first]?.line ?? 1,
    preamble: lines
      .filter((one) => one.line < firstUsed && one.text.trim() !== '')
      .slice(0, 200)
      .map((one) => one.text.trim().slice(0, 300)),
    columns: columns.columns,
    headerCells: (header?.cells ?? []).map((cell) => cell.trim()),
    unitsCells: (units?.cells ?? []).map((cell) => cell.trim()),
    cuts: parted.cuts,
    trailingDelimiter: trailing,
    comment: commentMark(lines),
    duplicates: columns.duplicates,
    firstLines: lines.slice(0, 30).map((one) => one.text.slice(0, 400)),
  };
}

function shape(line: string, parted: Parted): { cells: number; readings: number; filled: number } {
  const cells = splitLine(line, parted.delimiter, parted.cuts);
  let readings = 0;
  let filled = 0;
  for (const cell of cells) {
    const kind = cellKind(cell, parted.decimal);
    if (kind === 'empty' || kind === 'mark') continue;
    filled++;
    if (isReading(kind)) readings++;
  }
  return { cells: cells.length, readings, filled };
}

/** The first line that is a row of readings and is followed by others. */
function firstRow(lines: readonly HeadLine[], parted: Parted): number {
  const isRow = (line: string): boolean => {
    if (line.trim() === '' || isComment(line)) return false;
    const { cells, readings, filled } = shape(line, parted);
    const wide = parted.width <= 3 ? cells >= parted.width : cells >= 0.6 * parted.width;
    return wide && readings > 0 && readings * 2 >= filled;
  };
  for (let i = 0; i < lines.length; i++) {
    if (!isRow(lines[i]?.text ?? '')) continue;
    const next = lines.slice(i + 1, i + 9).filter((one) => one.text.trim() !== '');
    const rows = next.filter((one) => isRow(one.text)).length;
    if (rows * 2 >= next.length) return i;
  }
  return -1;
}

function isComment(line: string): boolean {
  return /^\s*(#|\/\/|%|!)/.test(line);
}

function stripComment(line: string): string {
  return line.replace(/^\s*(#+|\/\/|%+|!)\s?/, '');
}

/** Text lines directly above the first row whose width is that of the rows. */
function headerBlock(lines: readonly HeadLine[], first: number, parted: Parted): BlockLine[] {
  const block: BlockLine[] = [];
  for (let i = first - 1; i >= 0 && block.length < BLOCK_LINES; i--) {
    const one = lines[i];
    if (!one) break;
    if (one.text.trim() === '' || /^[\s\-=+|]+$/.test(one.text)) {
      if (block.length > 0) break;
      continue;
    }
    const cells = headerCellsOf(one.text, parted);
    const filled = cells.filter((cell) => cell.trim() !== '').length;
    const wide = cells.length >= Math.max(2, 0.6 * parted.width) || (parted.width <= 3 && cells.length >= parted.width);
    if (!wide || filled < 0.3 * parted.width) {
      if (block.length > 0) break;
      // A note between header and rows does not hide the header, but only one or two lines are forgiven.
      if (first - i > 3) break;
      continue;
    }
    const readings = cells.filter((cell) => isReading(cellKind(cell, parted.decimal))).length;
    if (readings * 2 > filled && filled > 1) break;
    const units = cells.filter((cell) => cell.trim() !== '' && isUnitText(cell)).length / Math.max(1, filled);
    const names = cells.filter((cell) => nameScore(splitHeader(cell).name) > 0).length / Math.max(1, filled);
    block.unshift({ ...one, cells, units, names, filled });
  }
  return block;
}

function headerCellsOf(text: string, parted: Parted): string[] {
  const bare = stripComment(text);
  if (parted.delimiter === 'spaces' || parted.delimiter === 'fixed') {
    const apart = bare.trim().split(/\s{2,}|\t/);
    if (apart.length === parted.width) return apart;
    const words = bare.trim().split(/\s+/);
    if (words.length === parted.width) return words;
    return parted.delimiter === 'fixed' ? splitLine(text, 'fixed', parted.cuts) : words;
  }
  return splitLine(bare, parted.delimiter, parted.cuts);
}

function pickHeader(block: readonly BlockLine[]): BlockLine | undefined {
  let best: BlockLine | undefined;
  let bestScore = Number.NEGATIVE_INFINITY;
  block.forEach((one, i) => {
    const distinct = new Set(one.cells.map((cell) => cell.trim().toLowerCase())).size / Math.max(1, one.cells.length);
    const unitRow = one.units >= 0.6 && block.length > 1 ? 1 : 0;
    // Among lines alike the first is the header: recorders put units below names more often than above.
    const score =
      2 * one.names + distinct - 1.5 * unitRow * one.units + one.filled / Math.max(1, one.cells.length) - 0.01 * i;
    if (score > bestScore) {
      best = one;
      bestScore = score;
    }
  });
  return best;
}

function pickUnits(block: readonly BlockLine[], header: BlockLine | undefined): BlockLine | undefined {
  let best: BlockLine | undefined;
  for (const one of block) {
    if (one === header || one.units < 0.5) continue;
    if (!best || one.units * one.filled > best.units * best.filled) best = one;
  }
  return best;
}

/** A line above the header that groups its columns (`Oil,,Coolant`), used only where the header alone says little. */
function groupLine(
  block: readonly BlockLine[],
  header: BlockLine,
  units: BlockLine | undefined,
): BlockLine | undefined {
  const above = block[block.indexOf(header) - 1];
  if (!above || above === units || above.units >= 0.5) return undefined;
  const merged = mergeGroups(header.cells, above.cells);
  const better = merged.filter((cell) => nameScore(splitHeader(cell).name) > 0).length / Math.max(1, header.filled);
  return better > header.names + 0.2 ? above : undefined;
}

function mergeGroups(cells: readonly string[], groups: readonly string[] | undefined): string[] {
  if (!groups) return cells.map((cell) => cell.trim());
  let group = '';
  return cells.map((cell, i) => {
    group = groups[i]?.trim() || group;
    return `${group} ${cell.trim()}`.trim();
  });
}

function lastFilled(cells: readonly string[]): number {
  for (let i = cells.length; i > 0; i--) if ((cells[i - 1] ?? '').trim() !== '') return i;
  return 0;
}

function isTrailing(
  lines: readonly HeadLine[],
  first: number,
  parted: Parted,
  headerCells: readonly string[],
): boolean {
  if (lastFilled(headerCells) >= parted.width) return false;
  return lines
    .slice(first, first + 50)
    .every((one) => one.text.trim() === '' || /[,;\t|]\s*$/.test(one.text) || one.text.endsWith(parted.delimiter));
}

function nameColumns(
  header: readonly string[],
  units: readonly string[],
  others: readonly string[],
  width: number,
): { columns: HeaderColumn[]; duplicates: string[] } {
  const seen = new Map<string, number>();
  const duplicates: string[] = [];
  const columns: HeaderColumn[] = [];
  for (let index = 0; index < width; index++) {
    const text = (header[index] ?? '').trim().replace(/\s+/g, ' ') || `Column ${index + 1}`;
    const times = (seen.get(text) ?? 0) + 1;
    seen.set(text, times);
    if (times === 2) duplicates.push(text);
    const split = splitHeader(text);
    const below = (units[index] ?? '').trim();
    const second = (others[index] ?? '').trim();
    columns.push({
      column: times === 1 ? text : `${text}#${times}`,
      index,
      name: split.name,
      unitText: below !== '' ? below : split.unitText || second,
      otherUnitText: below !== '' ? split.unitText || second : split.unitText ? second : '',
    });
  }
  return { columns, duplicates };
}

function commentMark(lines: readonly HeadLine[]): string | null {
  for (const one of lines) {
    const mark = /^\s*(#|\/\/|%|!)/.exec(one.text)?.[1];
    if (mark) return mark;
  }
  return null;
}
