/** Writes one table in any dialect: the other half of the round trip. It shares no code with the reader. */
export interface WrittenColumn {
  name: string;
  unit: string;
  decimals: number;
  /** NaN where missing */
  values: number[];
}

export interface WrittenDialect {
  encoding: 'utf-8' | 'utf-8-mark' | 'utf-16le' | 'utf-16be' | 'latin-1';
  delimiter: ',' | ';' | '\t' | '|' | 'fixed';
  decimal: '.' | ',';
  thousands: boolean;
  quote: 'none' | 'all' | 'text';
  end: '\n' | '\r\n' | '\r' | 'mixed';
  preamble: number;
  comments: boolean;
  units: 'row' | 'header' | 'suffix';
  trailing: boolean;
  finalEnd: boolean;
  time: 'elapsed' | 'date-time' | 'iso' | 'epoch' | 'twelve-hour';
  blanks: boolean;
}

/** Left by the writer where a blank line follows. */
const BLANK = '\u0001';

const pad = (n: number, width = 2) => String(Math.floor(n)).padStart(width, '0');

function clock(seconds: number): string {
  return `${pad(seconds / 3600)}:${pad((seconds / 60) % 60)}:${pad(seconds % 60)}`;
}

function timeCells(form: WrittenDialect['time'], row: number): { names: string[]; units: string[]; cells: string[] } {
  const s = 36_000 + row;
  if (form === 'elapsed') return { names: ['Elapsed'], units: ['s'], cells: [String(row)] };
  if (form === 'iso') return { names: ['Time UTC'], units: [''], cells: [`2031-05-04T${clock(s)}Z`] };
  if (form === 'epoch') return { names: ['Unix Time'], units: ['s'], cells: [String(1_935_655_200 + row)] };
  if (form === 'date-time')
    return { names: ['Date', 'UTC'], units: ['yyyy-mm-dd', 'hh:mm:ss'], cells: ['2031-05-04', clock(s)] };
  const hour = Math.floor(s / 3600);
  const half = `${pad(hour % 12 || 12)}:${pad((s / 60) % 60)}:${pad(s % 60)} ${hour < 12 ? 'AM' : 'PM'}`;
  return { names: ['Date', 'Time'], units: ['mm/dd/yyyy', ''], cells: ['05/24/2031', half] };
}

function figure(value: number, decimals: number, d: WrittenDialect): string {
  if (Number.isNaN(value)) return '';
  let [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const mark = d.decimal === ',' ? '.' : ',';
  if (d.thousands && fraction !== undefined) whole = whole.replace(/\B(?=(\d{3})+$)/g, mark);
  return `${value < 0 ? '-' : ''}${whole}${fraction === undefined ? '' : d.decimal + fraction}`;
}

/** The file as text. */
export function writeTable(columns: readonly WrittenColumn[], rows: number, d: WrittenDialect): string {
  const head = timeCells(d.time, 0);
  const units = [...head.units, ...columns.map((one) => one.unit)];
  const names = [...head.names, ...columns.map((one) => one.name)].map((name, i) => {
    const unit = units[i] ?? '';
    if (d.units === 'row' || unit === '') return name;
    return d.units === 'suffix' && i >= head.names.length ? `${name} ${unit}` : `${name} (${unit})`;
  });
  const table = [names, ...(d.units === 'row' ? [units] : [])];
  for (let i = 0; i < rows; i += 1) {
    table.push([
      ...timeCells(d.time, i).cells,
      ...columns.map((one) => figure(one.values[i] ?? Number.NaN, one.decimals, d)),
    ]);
  }
  const lines = [
    ...Array.from({ length: d.preamble }, (_, i) =>
      d.comments ? `# setting ${i} of the recorder` : `setting ${i} of the recorder`,
    ),
    ...(d.delimiter === 'fixed' ? fixedLines(table) : partedLines(table, d, names.length)),
  ];
  return lines.map((line, i) => line + endOf(d, i, i === lines.length - 1)).join('');
}

function partedLines(table: readonly string[][], d: WrittenDialect, width: number): string[] {
  return table.map((cells, r) => {
    const written = cells.map((cell) => {
      const needs = d.delimiter !== 'fixed' && cell.includes(d.delimiter);
      const all = d.quote === 'all' || (d.quote === 'text' && r === 0);
      return needs || all ? `"${cell}"` : cell;
    });
    const line = written.join(d.delimiter) + (d.trailing ? d.delimiter : '');
    return d.blanks && width > 0 && r > 3 && r % 7 === 0 ? line + BLANK : line;
  });
}

function fixedLines(table: readonly string[][]): string[] {
  const widths = (table[0] ?? []).map((_, c) => Math.max(...table.map((cells) => (cells[c] ?? '').length)) + 2);
  return table.map((cells) => cells.map((cell, c) => cell.padStart(widths[c] ?? 0)).join(''));
}

function endOf(d: WrittenDialect, line: number, last: boolean): string {
  if (last && !d.finalEnd) return '';
  const end = d.end === 'mixed' ? (line % 3 === 0 ? '\r\n' : '\n') : d.end;
  return end;
}

/** The bytes of a text; a blank line for each mark left by the writer. */
export function encodeText(text: string, encoding: WrittenDialect['encoding']): Uint8Array {
  const marked = text.replace(new RegExp(`${BLANK}(\\r\\n|\\n|\\r)`, 'g'), '$1$1').replaceAll(BLANK, '');
  if (encoding === 'utf-8') return new TextEncoder().encode(marked);
  if (encoding === 'utf-8-mark') return new TextEncoder().encode(`\ufeff${marked}`);
  const units = [...marked].map((letter) => letter.charCodeAt(0));
  if (encoding === 'latin-1') return Uint8Array.from(units);
  const big = encoding === 'utf-16be';
  return Uint8Array.from(units.flatMap((unit) => (big ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])));
}
