/**
 * Structured mutations of good files: no crash, no hang, a refusal says why, and every value of a file that is accepted
 * is the one that stood in its cell before, or what was done to it is told.
 */
import process from 'node:process';
import { type LogTable, type ReadOutcome, readLogBytes } from '../../analysis/logs/index.ts';
import { seededRandom } from '../../analysis/numbers/index.ts';
import { fromSi } from '../../analysis/units/index.ts';
import { GOOD_FILES, type GoodFile, type Mutant, mutate, type Row } from './mutate-log.ts';

export interface FuzzCount {
  tried: number;
  accepted: number;
  asked: number;
  refused: number;
  /** values of accepted files held against the cells they came from */
  values: number;
  slowestMs: number;
  /** rows in which one cell was put in and one taken out: whole to look at, and past telling */
  cancelled: number;
  /** what no accepted file may show, the first of them */
  wrong: string[];
  wrongCount: number;
}

const SHOWN = 20;

/**
 * Read mutated files.
 * @param count how many
 * @param seed of the mutations
 */
export function fuzzReader(count: number, seed: number): FuzzCount {
  const found: FuzzCount = {
    tried: 0,
    accepted: 0,
    asked: 0,
    refused: 0,
    values: 0,
    slowestMs: 0,
    cancelled: 0,
    wrong: [],
    wrongCount: 0,
  };
  for (let k = 0; k < count; k++) {
    // Each mutation has a seed of its own, so that one can be looked at alone.
    const file = GOOD_FILES[k % GOOD_FILES.length] ?? GOOD_FILES[0];
    if (!file) break;
    const mutant = mutate(file, seededRandom(`${seed}:${k}`));
    const start = performance.now();
    const outcome = readLogBytes(mutant.bytes, { file: 'x.csv', sha256: '0'.repeat(64) });
    found.slowestMs = Math.max(found.slowestMs, performance.now() - start);
    found.tried += 1;
    const wrong = judge(found, file, mutant, outcome);
    if (wrong.length > 0 && mutant.rows.some(({ put, taken }) => put > 0 && put === taken)) {
      found.cancelled += 1;
      continue;
    }
    found.wrongCount += wrong.length;
    for (const one of wrong) {
      if (found.wrong.length < SHOWN)
        found.wrong.push(`${seed}:${k} (${file.name}; ${mutant.deeds.join(', ')}): ${one}`);
    }
  }
  return found;
}

function judge(found: FuzzCount, file: GoodFile, mutant: Mutant, outcome: ReadOutcome): string[] {
  if (outcome.accepted === 'no') {
    found.refused += 1;
    const said = outcome.problems.every((one) => one.message.length > 20 && one.mend.length > 5);
    return outcome.problems.length > 0 && said ? [] : ['refused without a reason'];
  }
  if (outcome.accepted === 'ask') {
    found.asked += 1;
    // Where the comma itself is in question, no value is settled.
    if (outcome.questions.some((one) => one.id === 'decimal' || one.id === 'columns')) return [];
  } else found.accepted += 1;
  if (outcome.table) return judgeTable(found, file, mutant, outcome, outcome.table);
  // What the time is may be all that is asked.
  return outcome.accepted === 'ask' ? [] : ['accepted without a table'];
}

/** What the file says about itself as a whole, beyond what it always says. */
function isTold({ flags, rowsRejectedCount }: ReadOutcome): boolean {
  return rowsRejectedCount > 0 || flags.length > 0;
}

interface Found {
  row: number;
  seconds: number;
  source: Row;
}

function judgeTable(
  found: FuzzCount,
  file: GoodFile,
  { rows }: Mutant,
  outcome: ReadOutcome,
  table: LogTable,
): string[] {
  const wrong: string[] = [];
  const told = isTold(outcome);
  const columns = table.channels.filter((channel) => !channel.texts);
  const written = (channel: (typeof columns)[number], r: number) => {
    const value = channel.values[r] ?? Number.NaN;
    return channel.quantity !== null && channel.unit !== null ? fromSi(value, channel.unit) : value;
  };
  const traced: Found[] = [];
  for (let r = 0; r < table.rows; r += 1) {
    const values = columns.map((channel) => ({ channel, c: channel.index, value: written(channel, r) }));
    const source = sourceOf(file, rows, values, (traced.at(-1)?.source.id ?? -1) + 1);
    if (!source) {
      if (!told) wrong.push(`row ${r} is none of the file's rows, and nothing is said`);
      continue;
    }
    traced.push({ row: r, seconds: table.time.seconds[r] ?? Number.NaN, source });
    // A row that stands twice may have been changed in one place alone.
    const copies = rows.filter((row) => row.id === source.id);
    for (const { channel, c, value } of values) {
      const before = file.numbers[source.id ?? 0]?.[c] ?? Number.NaN;
      if (!Number.isNaN(value)) found.values += 1;
      if (isSame(value, before) && copies.some((row) => !row.changed.has(c))) continue;
      const flagged = channel.flags.some((one) => coversRow(one, table.time.seconds[r] ?? 0));
      if (Number.isNaN(value)) {
        if (!flagged && !told) wrong.push(`row ${r}, "${channel.column}": lost in silence`);
        continue;
      }
      const texts = copies.flatMap((row) => row.changed.get(c) ?? []);
      const allowed = texts.some((text) => numbersIn(text, file.decimal).some((one) => isSame(one, value)));
      const isBroken = copies.some((row) => row.broken);
      if (allowed || (isBroken && told) || ((isBroken || texts.length > 0) && flagged)) continue;
      const now = texts.map((text) => `, now ${JSON.stringify(text).slice(0, 30)}`).join('');
      wrong.push(`row ${r}, "${channel.column}": ${value} where ${before} stood${now}`);
    }
  }
  const there = new Set(traced.map((one) => one.source.id));
  const lost = rows.filter((row) => row.id !== null && !row.broken && row.changed.size === 0 && !there.has(row.id));
  if (lost.length > 0 && !told) wrong.push(`row ${lost[0]?.id} of the good file is lost in silence`);
  wrong.push(...wrongTimes(file, traced, outcome));
  return wrong;
}

/** Times between whole rows are those of the good file, or the file says that its clock was odd. */
function wrongTimes(file: GoodFile, traced: readonly Found[], { flags, questions, table }: ReadOutcome): string[] {
  if (flags.length > 0 || questions.some((one) => one.concerns.includes('time'))) return [];
  const whole = traced.filter(({ source }) => !source.broken && !source.changed.has(file.clock));
  const [first] = whole;
  if (!first || !table) return [];
  const secondsOf = ({ source }: Found) => file.seconds[source.id ?? 0] ?? Number.NaN;
  const odd = whole.find((one) => !isSame(one.seconds - first.seconds, secondsOf(one) - secondsOf(first)));
  return odd
    ? [`row ${odd.row}: ${odd.seconds - first.seconds} s where ${secondsOf(odd) - secondsOf(first)} s stood`]
    : [];
}

function coversRow(flag: { fromSeconds?: number; toSeconds?: number }, seconds: number): boolean {
  return seconds >= (flag.fromSeconds ?? 0) - 1e-6 && seconds <= (flag.toSeconds ?? Number.POSITIVE_INFINITY) + 1e-6;
}

const isSame = (a: number, b: number) =>
  (Number.isNaN(a) && Number.isNaN(b)) || Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));

/**
 * The row of the mutated file that most values of a read row come from; at least half of them. Of two that share as
 * many, the one whose turn it is: a broken row can be as like another as itself.
 */
function sourceOf(
  file: GoodFile,
  rows: readonly Row[],
  values: { c: number; value: number }[],
  turn: number,
): Row | undefined {
  let best: Row | undefined;
  let most = 0;
  for (const row of rows) {
    if (row.id === null) continue;
    const numbers = file.numbers[row.id] ?? [];
    const count = values.filter(
      ({ c, value }) => !Number.isNaN(value) && isSame(value, numbers[c] ?? Number.NaN),
    ).length;
    if (count > most || (count === most && count > 0 && row.id === turn)) [best, most] = [row, count];
  }
  return most >= Math.max(2, values.filter(({ value }) => !Number.isNaN(value)).length / 2) ? best : undefined;
}

/** What a changed cell may be read as: the number that it shows, written out by rules of this file alone. */
function numbersIn(text: string, decimal: '.' | ','): number[] {
  const bare = text.trim().replace(/^"|"$/g, '').replaceAll('\u0000', '').replace('\u2212', '-').trim();
  const pointed = decimal === ',' ? bare.replace(',', '.') : bare;
  const plain = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(pointed) ? [Number(pointed)] : [];
  const groups = decimal === ',' ? /[.\s\u00a0'’]/g : /[,\s\u00a0'’]/g;
  const isGrouped = /^[+-]?\d{1,3}([.,\s\u00a0'’]\d{3})+([.,]\d*)?$/.test(bare);
  const grouped = isGrouped ? [Number(bare.replace(groups, '').replace(decimal, '.'))] : [];
  return [...plain, ...grouped];
}

if (process.argv[1]?.endsWith('fuzz-reader.ts')) {
  const found = fuzzReader(Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 1));
  process.stdout.write(`${JSON.stringify(found, null, 1)}\n`);
}
