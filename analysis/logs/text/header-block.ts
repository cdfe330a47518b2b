/** Names, units and groups of columns among the lines above the first row, in whichever order a recorder writes them. */
import { splitHeader } from '../channels/header-text.ts';
import { matchName } from '../channels/match-name.ts';
import { isUnitText, readUnitText } from '../channels/unit-text.ts';
import { timeRole } from '../clock/time-names.ts';
import { cellKind, isReading } from './cell-kind.ts';
import type { Parted } from './find-delimiter.ts';
import type { HeadLine } from './head-lines.ts';
import { splitLine } from './split-line.ts';

const BLOCK_LINES = 8;
/** A line of which this share are units is a units row. */
const MOSTLY_UNITS = 0.6;

/** A line of the header block with its cells. */
interface BlockLine extends HeadLine {
  cells: string[];
  /** share of its cells that are units */
  units: number;
  filled: number;
}

export interface HeaderBlock {
  /** names, one a column; empty where the file has none */
  names: string[];
  /** the line they stand in, its own cells, and the first line that belongs to the block */
  header: { line: number; cells: string[] } | null;
  units: { line: number; cells: string[] } | null;
  /** a second units row */
  otherUnits: string[];
  firstLine: number;
}

/**
 * Find the header block above the first row.
 * @param lines lines of the head
 * @param first place of the first row among them, count
 * @param parted how cells are parted, object
 * @returns names and units
 */
export function findHeader(lines: readonly HeadLine[], first: number, parted: Parted): HeaderBlock {
  const block = blockAbove(lines, first, parted);
  const unitRows = block.length > 1 ? unitRowsOf(block) : [];
  const [units, other] = unitRows;
  const named = pickNames(
    block.filter((one) => !unitRows.includes(one)),
    units?.cells ?? [],
  );
  const used = [...unitRows, ...named.lines];
  return {
    names: named.cells,
    header: named.header ? { line: named.header.line, cells: named.header.cells.map((cell) => cell.trim()) } : null,
    units: units ? { line: units.line, cells: units.cells.map((cell) => cell.trim()) } : null,
    otherUnits: other?.cells ?? [],
    firstLine: Math.min(lines[first]?.line ?? 1, ...used.map((one) => one.line)),
  };
}

function blockAbove(lines: readonly HeadLine[], first: number, parted: Parted): BlockLine[] {
  const block: BlockLine[] = [];
  for (let i = first - 1; i >= 0 && block.length < BLOCK_LINES; i--) {
    const one = lines[i];
    if (!one) break;
    if (one.text.trim() === '' || /^[\s\-=+|]+$/.test(one.text)) {
      if (block.length > 0) break;
      continue;
    }
    const cells = headerCells(one.text, parted);
    const filled = cells.filter((cell) => cell.trim() !== '').length;
    const wide = parted.width <= 3 ? cells.length >= parted.width : cells.length >= 0.6 * parted.width;
    const readings = cells.filter((cell) => isReading(cellKind(cell, parted.decimal))).length;
    if (!wide || cells.length < 2 || filled < 0.3 * parted.width) {
      // A note between header and rows does not hide the header, but only one or two lines are forgiven.
      if (block.length > 0 || first - i > 3) break;
      continue;
    }
    if (readings * 2 > filled && filled > 1) break;
    const units = cells.filter((cell) => cell.trim() !== '' && isUnitText(cell)).length / Math.max(1, filled);
    block.unshift({ ...one, cells, units, filled });
  }
  return block;
}

function headerCells(text: string, parted: Parted): string[] {
  const bare = text.replace(/^\s*(#+|\/\/|%+|!)\s?/, '');
  if (parted.delimiter !== 'spaces' && parted.delimiter !== 'fixed') {
    return splitLine(bare, parted.delimiter, parted.cuts);
  }
  const apart = bare.trim().split(/\s{2,}|\t/);
  if (apart.length === parted.width) return apart;
  const words = bare.trim().split(/\s+/);
  if (words.length === parted.width) return words;
  return parted.cuts.length + 1 === parted.width ? splitLine(text, 'fixed', parted.cuts) : words;
}

/** Units rows, the fullest first. Of lines that are all units (`rpm, volts, amps`) the first holds the names. */
function unitRowsOf(block: readonly BlockLine[]): BlockLine[] {
  const rows = block.filter((one) => one.units >= MOSTLY_UNITS);
  if (rows.length === block.length) rows.shift();
  return rows.sort((a, b) => b.units * b.filled - a.units * a.filled).slice(0, 2);
}

interface Names {
  cells: string[];
  header: BlockLine | null;
  lines: BlockLine[];
}

/** One line of names, or two that make them together (`Oil` above `Temp`): whichever names more columns. */
function pickNames(lines: readonly BlockLine[], units: readonly string[]): Names {
  let best: Names = { cells: [], header: null, lines: [] };
  let most = -1;
  const consider = (cells: string[], header: BlockLine, used: BlockLine[], handicap: number): void => {
    const distinct = new Set(cells.map((cell) => cell.toLowerCase())).size / Math.max(1, cells.length);
    const worth =
      knownNames(cells, units) + 0.5 * distinct + (0.3 * header.filled) / Math.max(1, cells.length) - handicap;
    if (worth > most) {
      best = { cells, header, lines: used };
      most = worth;
    }
  };
  lines.forEach((line, i) => {
    const cells = line.cells.map((cell) => cell.trim().replace(/\s+/g, ' '));
    consider(cells, line, [line], 0.02 * i);
    const above = lines[i - 1];
    if (above) consider(merge(above.cells, cells), line, [above, line], 0.15);
  });
  return best;
}

function knownNames(cells: readonly string[], units: readonly string[]): number {
  const known = cells.filter((cell, i) => {
    const split = splitHeader(cell);
    if (timeRole(split.name) !== null) return true;
    const match = matchName(split.name, readUnitText(units[i]?.trim() || split.unitText));
    return match.otherQuantity || (match.quantities.length === 1 && match.confidence >= 0.6);
  });
  return known.length / Math.max(1, cells.length);
}

function merge(groups: readonly string[], cells: readonly string[]): string[] {
  let group = '';
  return cells.map((cell, i) => {
    group = groups[i]?.trim() || group;
    return `${group} ${cell}`.trim();
  });
}
