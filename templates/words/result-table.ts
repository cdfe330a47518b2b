/** A table of a result as a page shows it: trade units, value with its U95 in one cell, the way back to the samples. */
import type { Cell, ResultTable } from '../../analysis/results/index.ts';
import { fromSi, isUnit, show, unitOf } from '../../analysis/units/index.ts';
import { type CellPart, cell, type TablePart } from '../parts/table.view.ts';
import { nameInWords } from './list.ts';
import { cellText } from './quantity.ts';
import { clockInWords, spanInWords } from './time.ts';
import { type InstrumentUnits, unitShown } from './unit-shown.ts';

export interface TableLinks {
  /** address of the samples of a span; empty where there are none */
  samples(fromSeconds: number, toSeconds: number): string;
  csv: string;
}

interface ShownColumn {
  name: string;
  unit: string;
  number: boolean;
  cell(row: readonly Cell[]): CellPart;
}

/** Columns that say what a row is. */
const HEADS = ['label', 'segment', 'case', 'what', 'leg', 'run', 'place', 'channel', 'curve'];

/**
 * A result table in the units of the airplane's instruments.
 * @param table as the result carries it, SI
 * @param units the airplane's instrument units, object
 * @param links where rows and the CSV lead
 */
export function resultTableInWords(table: ResultTable, units: InstrumentUnits, links: TableLinks): TablePart {
  const columns = columnsOf(table, units, links);
  return {
    caption: nameInWords(table.name),
    columns: columns.map(({ name, unit, number }) => ({ name, unit, number })),
    rows: table.rows.map((row) => ({ aside: false, cells: columns.map((column) => column.cell(row)) })),
    csv: links.csv,
    empty: 'No rows.',
  };
}

function columnsOf(table: ResultTable, units: InstrumentUnits, links: TableLinks): ShownColumn[] {
  const names = table.columns.map((one) => one.name);
  const at = (name: string) => names.indexOf(name);
  const order = [
    ...HEADS.filter((name) => names.includes(name)).slice(0, 1),
    ...names.filter((name) => name !== HEADS.find((head) => names.includes(head))),
  ];
  const columns: ShownColumn[] = [];
  for (const name of order) {
    if (isPartOfOther(name, names)) continue;
    const index = at(name);
    const unit = table.columns[index]?.unit ?? 'none';
    if (name === 'from-seconds') columns.push(samplesColumn(at('from-seconds'), at('to-seconds'), links));
    else columns.push(valueColumn(name, unit, index, extrasOf(name, names), units, order[0] === name));
  }
  return columns;
}

interface Extras {
  half: number;
  low: number;
  high: number;
}

/** Where the uncertainty of a column stands: `x-u95`, a lone `u95` right behind it, or both ends. */
function extrasOf(name: string, names: readonly string[]): Extras {
  const own = names.indexOf(`${name}-u95`);
  const lone = names[names.indexOf(name) + 1] === 'u95' ? names.indexOf('u95') : -1;
  return {
    half: own >= 0 ? own : lone,
    low: names.indexOf(`${name}-low`),
    high: names.indexOf(`${name}-high`),
  };
}

function isPartOfOther(name: string, names: readonly string[]): boolean {
  if (name === 'to-seconds') return names.includes('from-seconds');
  if (name === 'u95') return names.indexOf('u95') > 0;
  const of = /^(.*)-(u95|low|high)$/.exec(name)?.[1];
  return of !== undefined && names.includes(of);
}

function samplesColumn(from: number, to: number, links: TableLinks): ShownColumn {
  return {
    name: 'Samples',
    unit: 'from, to',
    number: true,
    cell: (row) => {
      const [start, end] = [row[from], row[to]];
      if (typeof start !== 'number' || typeof end !== 'number') return cell('—', { number: true });
      return cell(spanInWords(start, end), { number: true, href: links.samples(start, end) });
    },
  };
}

function valueColumn(
  name: string,
  unit: string,
  index: number,
  extras: Extras,
  units: InstrumentUnits,
  heading: boolean,
): ShownColumn {
  const isNumber = isUnit(unit) && unitOf(unit).dimension !== 'none';
  const isClock = unit === 's' && /^(time|seconds|at)$|-at$/.test(name);
  const shown = isNumber && !isClock ? unitShown(name, unit, units) : '';
  return {
    name: nameInWords(name),
    unit: isClock ? 'min:s' : shown === '' ? '' : unitOf(shown).symbol,
    number: isNumber,
    cell: (row) => cell(textOf(row, index, extras), { number: isNumber, heading }),
  };

  function textOf(row: readonly Cell[], at: number, { half, low, high }: Extras): string {
    const value = row[at] ?? null;
    if (isClock && typeof value === 'number') return clockInWords(value);
    const u95 = row[half];
    const text = cellText(value, unit, name, units, typeof u95 === 'number' ? u95 : undefined);
    const [from, to] = [row[low], row[high]];
    if (shown === '' || typeof from !== 'number' || typeof to !== 'number' || from === to) return text;
    return `${text} (${show(from, shown).number} to ${show(to, shown).number})`;
  }
}

/** The same table as CSV: the units shown, plain numbers, text that no spreadsheet runs. */
export function resultTableAsCsv(table: ResultTable, units: InstrumentUnits): string {
  const shown = table.columns.map(({ name, unit }) =>
    isUnit(unit) && unitOf(unit).dimension !== 'none' ? unitShown(name, unit, units) : '',
  );
  const head = table.columns.map(({ name }, i) => csvText(shown[i] ? `${name} [${shown[i]}]` : name));
  const rows = table.rows.map((row) => row.map((one, i) => csvCell(one, shown[i] ?? '')).join(','));
  return `${[head.join(','), ...rows].join('\r\n')}\r\n`;
}

function csvCell(value: Cell, unit: string): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    return unit === '' ? String(value) : String(Number(fromSi(value, unit).toPrecision(9)));
  }
  return csvText(String(value));
}

/** Text of a CSV cell; one that a spreadsheet would run as a formula gets a mark before it. */
export function csvText(text: string): string {
  return `"${text.replace(/^([=+\-@\t\r])/, "'$1").replaceAll('"', '""')}"`;
}
