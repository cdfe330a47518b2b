/**
 * Good files and structured mutations of them. Every row keeps its number and every cell its first text, whatever is
 * done to it, so that what was read can be held against what stood there before.
 */
import type { Random } from '../../analysis/numbers/index.ts';

/** A row of a file on its way through the mutations. */
export interface Row {
  /** place among the rows of the good file, or null for a line that was put in */
  id: number | null;
  cells: string[];
  /** cells whose text was replaced, by place */
  changed: Map<number, string>;
  /** the line itself was broken, joined, cut or pushed about: its cells no longer stand in their columns */
  broken: boolean;
  /** cells put in and taken out: as many of one as of the other, and the line looks whole */
  put: number;
  taken: number;
  end: string;
}

export interface GoodFile {
  name: string;
  delimiter: string;
  decimal: '.' | ',';
  head: string[];
  /** numbers as written, by row and column; NaN in columns that hold none */
  numbers: number[][];
  /** column of the time, and seconds of each row */
  clock: number;
  seconds: number[];
  texts: string[][];
}

export interface Mutant {
  bytes: Uint8Array;
  rows: Row[];
  /** what was done, in order */
  deeds: string[];
}

const ROWS = 36;
const pad = (n: number) => String(n).padStart(2, '0');

/** Every number of a column stands in it once, so that a value tells its row. */
const COLUMNS: { name: string; unit: string; text: (i: number) => string }[] = [
  { name: 'RPM', unit: 'rpm', text: (i) => String(2400 + 3 * i) },
  { name: 'Coolant Temp', unit: 'degC', text: (i) => (78 + i * 0.13).toFixed(2) },
  { name: 'Oil Temp', unit: 'degF', text: (i) => (171 + i * 0.3).toFixed(1) },
  { name: 'MAP', unit: 'inHg', text: (i) => (22 + i * 0.07).toFixed(2) },
  { name: 'Bus', unit: 'V', text: (i) => (13.2 + i * 0.011).toFixed(3) },
  { name: 'Something', unit: '', text: (i) => String(70_011 - 17 * i) },
];

interface Form {
  name: string;
  delimiter: string;
  decimal: '.' | ',';
  clock: { name: string; text: (i: number) => string };
  units: 'header' | 'row';
  preamble: string[];
  isQuoted: boolean;
  missing: boolean;
}

const elapsed = { name: 'Time (s)', text: (i: number) => String(i) };
const iso = { name: 'Timestamp', text: (i: number) => `2031-05-04T10:00:${pad(i)}Z` };
const plain: Form = {
  name: 'plain',
  delimiter: ',',
  decimal: '.',
  clock: elapsed,
  units: 'header',
  preamble: [],
  isQuoted: false,
  missing: false,
};
const FORMS: Form[] = [
  plain,
  { ...plain, name: 'ISO stamps', clock: iso },
  { ...plain, name: 'decimal commas', delimiter: ';', decimal: ',', units: 'row' },
  { ...plain, name: 'tabs and a preamble', delimiter: '\t', preamble: ['# Recorder', '# Session 4'], clock: iso },
  { ...plain, name: 'all in quotes', isQuoted: true },
  { ...plain, name: 'a units row and empty cells', units: 'row', missing: true },
  { ...plain, name: 'bars', delimiter: '|' },
];

export const GOOD_FILES: readonly GoodFile[] = FORMS.map(goodFile);

function goodFile({ name, delimiter, decimal, clock, units, preamble, isQuoted, missing }: Form): GoodFile {
  const shown = (text: string) => (decimal === ',' ? text.replace('.', ',') : text);
  const quote = (text: string) => (isQuoted ? `"${text}"` : text);
  const names = COLUMNS.map((one) => (units === 'header' && one.unit !== '' ? `${one.name} (${one.unit})` : one.name));
  const head = [...preamble, [clock.name, ...names].map(quote).join(delimiter)];
  if (units === 'row') head.push(['s', ...COLUMNS.map((one) => one.unit)].map(quote).join(delimiter));
  const isEmpty = (i: number, c: number) => missing && (i * 7 + c * 5) % 23 === 0;
  const texts = Array.from({ length: ROWS }, (_, i) => [
    quote(clock.text(i)),
    ...COLUMNS.map((one, c) => quote(isEmpty(i, c) ? '' : shown(one.text(i)))),
  ]);
  const numbers = Array.from({ length: ROWS }, (_, i) => [
    Number.NaN,
    ...COLUMNS.map((one, c) => (isEmpty(i, c) ? Number.NaN : Number(one.text(i)))),
  ]);
  return { name, delimiter, decimal, head, numbers, clock: 0, seconds: texts.map((_, i) => i), texts };
}

/** Texts put into a cell: marks, formulas, other alphabets, other signs, numbers that are none. */
const STRANGE = [
  '', '-', '---', 'NaN', 'N/A', 'null', 'inf', '=1+1', '@x', '+SUM(A1)', '1e9', '1e400', '-1e-400', '0x1F', '12.', '.5',
  '1.2.3', '1,5', '1 234', '1,234', '1.234,5', '१२', '７５', '12 C', '12F', '88%', '5 rpm', '+7', '--7', '7-', '(7)', 'O',
  '1O', 'l2', '12:34', '2031-05-04', 'ON', 'x', '"', '""', '"7', '7"', "7'", '\u00a07', '7\u00a0', '\ufeff7', '\u22127', '∞',
  '９', '7\u0000', '\u00007', '7\u200b', '$7', '7;8', '7|8', '7\t8', '9'.repeat(400), '7'.repeat(25), '0.00000000000000000000001',
]; // biome-ignore format: a list

type Deed = (rows: Row[], random: Random, file: GoodFile) => string;

const pick = <T>(list: readonly T[], random: Random): T | undefined => list[random.whole(list.length)];

function change(row: Row, c: number, text: string, delimiter: string): void {
  // Behind the last cell that is left, it is one more.
  if (c >= row.cells.length) row.put += 1;
  row.cells[c] = text;
  row.changed.set(c, text);
  // A sign that parts cells makes two of one.
  if (!text.includes(delimiter)) return;
  row.broken = true;
  row.put += 1;
}

const DEEDS: readonly Deed[] = [
  (rows, random, { delimiter }) => {
    const row = pick(rows, random);
    const text = pick(STRANGE, random) ?? '';
    if (row) change(row, random.whole(row.cells.length), text, delimiter);
    return `a cell reads ${JSON.stringify(text).slice(0, 20)}`;
  },
  (rows, random, { texts, delimiter }) => {
    const row = pick(rows, random);
    const other = pick(texts, random);
    const c = random.whole(texts[0]?.length ?? 1);
    if (row && other) change(row, c, other[c] ?? '', delimiter);
    return 'a cell reads as in another row';
  },
  (rows, random, { delimiter }) => {
    const row = pick(rows, random);
    if (!row) return '';
    const c = random.whole(row.cells.length);
    const text = row.cells[c] ?? '';
    const at = random.whole(text.length + 1);
    const put = String.fromCharCode(32 + random.whole(95));
    change(row, c, text.slice(0, at) + put + text.slice(at + random.whole(2)), delimiter);
    return 'a letter of a cell is another';
  },
  (rows, random) => {
    const row = pick(rows, random);
    if (!row) return '';
    row.cells.splice(random.whole(row.cells.length), 1);
    row.broken = true;
    row.taken += 1;
    return 'a cell is gone';
  },
  (rows, random) => {
    const row = pick(rows, random);
    if (!row) return '';
    row.cells.splice(random.whole(row.cells.length + 1), 0, pick(STRANGE, random) ?? '');
    row.broken = true;
    row.put += 1;
    return 'a cell is put in';
  },
  (rows, random) => {
    rows.splice(random.whole(rows.length), 1 + random.whole(3));
    return 'rows are gone';
  },
  (rows, random) => {
    const at = random.whole(rows.length);
    const row = rows[at];
    if (row) rows.splice(at + random.whole(2), 0, { ...row, cells: [...row.cells], changed: new Map(row.changed) });
    return 'a row stands twice';
  },
  (rows, random) => {
    const [a, b] = [random.whole(rows.length), random.whole(rows.length)];
    const [x, y] = [rows[a], rows[b]];
    if (x && y) [rows[a], rows[b]] = [y, x];
    return 'two rows change places';
  },
  (rows, random, { head, delimiter }) => {
    const lines = [
      '',
      '# note',
      '"',
      delimiter.repeat(6),
      head.at(-1) ?? '',
      head[0] ?? '',
      'power lost',
      '\u0000\u0000',
      '1',
    ];
    const line = pick(lines, random) ?? '';
    rows.splice(random.whole(rows.length + 1), 0, newLine(line.split(delimiter)));
    return `a line is put in: ${JSON.stringify(line).slice(0, 20)}`;
  },
  (rows, random) => {
    const row = pick(rows, random);
    if (row) row.end = pick(['\r\n', '\r', '\n\r', '\n\n', '\u2028', '\u000b\n', ' \n'], random) ?? '\n';
    if (row && /[\u2028]/.test(row.end)) breakWithNext(rows, row);
    return 'a line ends otherwise';
  },
  (rows, random) => {
    const row = pick(rows, random);
    if (!row) return '';
    row.end = '';
    breakWithNext(rows, row);
    return 'two lines are one';
  },
  (rows, random) => {
    const row = pick(rows, random);
    if (!row) return '';
    const c = random.whole(row.cells.length);
    const text = row.cells[c] ?? '';
    const at = random.whole(text.length + 1);
    row.cells[c] = `${text.slice(0, at)}\n${text.slice(at)}`;
    row.broken = true;
    return 'a line is broken';
  },
  (rows, random, { delimiter }) => {
    const row = pick(rows, random);
    if (!row) return '';
    const other =
      pick(
        [',', ';', '\t', '|', ' '].filter((one) => one !== delimiter),
        random,
      ) ?? ';';
    row.cells = [row.cells.join(other)];
    row.broken = true;
    return 'a row is parted by other signs';
  },
  (rows, random, { delimiter }) => {
    const row = pick(rows, random);
    if (!row) return '';
    const c = random.whole(row.cells.length);
    change(row, c, `"${row.cells[c] ?? ''}"`, delimiter);
    return 'a cell is quoted';
  },
  (rows, random, { delimiter }) => {
    const row = pick(rows, random);
    if (!row) return '';
    const c = random.whole(row.cells.length);
    change(row, c, `"${row.cells[c] ?? ''}`, delimiter);
    return 'a quote is opened';
  },
];

const newLine = (cells: string[]): Row => ({
  id: null,
  cells,
  changed: new Map(),
  broken: true,
  put: 0,
  taken: 0,
  end: '\n',
});

function breakWithNext(rows: readonly Row[], row: Row): void {
  row.broken = true;
  const next = rows[rows.indexOf(row) + 1];
  if (next) next.broken = true;
}

/** A good file, mutated one to four times. */
export function mutate(file: GoodFile, random: Random): Mutant {
  const rows = file.texts.map(
    (cells, id): Row => ({ id, cells: [...cells], changed: new Map(), broken: false, put: 0, taken: 0, end: '\n' }),
  );
  const deeds: string[] = [];
  for (let k = 1 + random.whole(4); k > 0 && rows.length > 0; k -= 1) {
    deeds.push((pick(DEEDS, random) ?? (() => ''))(rows, random, file));
  }
  const head = file.head.map((line) => `${line}\n`).join('');
  for (const [i, row] of rows.entries()) {
    const next = rows[i + 1];
    // The last cell runs on into what follows it on the same line.
    if (row.end === '' && next) {
      const [together = ''] = `${row.cells.at(-1)}${next.cells[0]}`.split('\n');
      row.changed.set(row.cells.length - 1, together);
    }
  }
  const lines = rows.map((row) => row.cells.join(file.delimiter) + row.end);
  let text = head + lines.join('');
  const whole = random.whole(8);
  if (whole === 0) {
    const at = head.length + random.whole(text.length - head.length + 1);
    deeds.push('the file is cut');
    breakFrom(rows, lines, at - head.length);
    text = text.slice(0, at);
  } else if (whole === 1) {
    deeds.push('every line ends in two letters');
    text = text.replace(/(?<!\r)\n(?!\r)/g, '\r\n');
  } else if (whole === 2) {
    deeds.push('no end of the last line');
    text = text.replace(/\n$/, '');
    const last = rows.at(-1);
    if (last) last.broken = true;
  }
  return { bytes: new TextEncoder().encode(text), rows, deeds };
}

/** Rows after the cut are gone, and the one that it met is broken. */
function breakFrom(rows: Row[], lines: readonly string[], at: number): void {
  let from = 0;
  const kept = lines.findIndex((line) => {
    from += line.length;
    return from > at;
  });
  if (kept < 0) return;
  const met = rows[kept];
  if (met) met.broken = true;
  rows.length = kept + 1;
}
