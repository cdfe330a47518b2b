/** A file read in pieces, wherever it is cut between two lines, is the file read in one go. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  HEAD_BYTES,
  joinPieces,
  type PieceRows,
  planPieces,
  type ReadOutcome,
  readLogBytes,
  readPiece,
} from '../../../analysis/logs/index.ts';
import { ODD_FILES } from './odd-files.ts';
import { encodeText, type WrittenDialect, writeTable } from './write-dialect.ts';

const OPTIONS = { file: 'log.csv', sha256: '0'.repeat(64) };

/** Null where the pieces cannot be read apart. `at` are places of cuts, 0 to 1. */
function readCut(bytes: Uint8Array, at: readonly number[]): ReadOutcome | null {
  const whole = bytes.length <= HEAD_BYTES;
  const plan = planPieces(bytes.subarray(0, HEAD_BYTES), OPTIONS, whole);
  if (!plan) return null;
  const cuts = at
    .map((share) => bytes.indexOf(10, Math.floor(share * bytes.length)) + 1)
    .filter((cut) => cut > plan.markBytes);
  const bounds = [plan.markBytes, ...new Set(cuts.sort((a, b) => a - b)), bytes.length];
  const pieces = bounds.slice(1).map((to, k): PieceRows => {
    const from = bounds[k] ?? 0;
    let next = from;
    const fill = (into: Uint8Array) => {
      // Short fills, as a disk may give them.
      const some = bytes.subarray(next, Math.min(to, next + Math.min(into.length, 3000)));
      into.set(some);
      next += some.length;
      return some.length;
    };
    return readPiece(plan, { isFirst: k === 0, isLast: to === bytes.length, size: to - from }, fill);
  });
  return joinPieces(plan, pieces, bytes.length, OPTIONS);
}

/** All that a reading holds, with every number in full. */
function inFull({ table, ...outcome }: ReadOutcome) {
  const channels = table?.channels.map(({ written: _, ...channel }) => ({
    ...channel,
    values: Array.from(channel.values),
  }));
  return {
    ...outcome,
    table: table && { ...table, time: { ...table.time, seconds: Array.from(table.time.seconds) }, channels },
  };
}

function inOneGo(bytes: Uint8Array): ReadOutcome {
  return readLogBytes(bytes, OPTIONS);
}

const bytesOf = (content: string | Uint8Array) =>
  typeof content === 'string' ? new TextEncoder().encode(content) : content;

const share = fc.integer({ min: 0, max: 999 }).map((n) => n / 1000);
const someCuts = fc.array(share, { minLength: 1, maxLength: 3 });

const dialects = fc.record<WrittenDialect>({
  encoding: fc.constantFrom('utf-8', 'utf-8-mark', 'latin-1'),
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  decimal: fc.constant('.'),
  thousands: fc.constant(false),
  quote: fc.constantFrom('none', 'none', 'none', 'none', 'text'),
  end: fc.constantFrom('\n', '\r\n', 'mixed'),
  preamble: fc.nat(12),
  comments: fc.boolean(),
  units: fc.constantFrom('row', 'header', 'suffix'),
  trailing: fc.boolean(),
  finalEnd: fc.constantFrom(true, true, true, false),
  time: fc.constantFrom('elapsed', 'date-time', 'iso', 'epoch', 'twelve-hour'),
  blanks: fc.boolean(),
});

/** What happens to a recorder's lines. */
const faults = fc.array(
  fc.record({
    at: share,
    what: fc.constantFrom('header', 'note', 'short', 'long', 'empty', 'word', 'mark', 'wide', 'fine', 'quote', 'zeros'),
  }),
  { maxLength: 4 },
);

function withFaults(text: string, list: readonly { at: number; what: string }[], delimiter: string): string {
  const lines = text.split('\n');
  const header = lines.find((line) => line.includes('Oil')) ?? '';
  for (const { at, what } of list) {
    const row = Math.floor(lines.length * (0.3 + 0.7 * at));
    const cells = (lines[row] ?? '').split(delimiter);
    const last = cells.length - 1;
    const change = (cell: string) => cells.with(Math.max(0, last - 1), cell).join(delimiter);
    if (what === 'header') lines.splice(row, 0, header);
    else if (what === 'note') lines.splice(row, 0, '# power restored');
    else if (what === 'empty') lines.splice(row, 0, '');
    else if (what === 'short') lines[row] = cells.slice(0, -2).join(delimiter);
    else if (what === 'long') lines[row] = [...cells, '1', '2'].join(delimiter);
    else if (what === 'word') lines[row] = change('LOW');
    else if (what === 'mark') lines[row] = change('---');
    else if (what === 'wide') lines[row] = change('123456789012.25');
    else if (what === 'fine') lines[row] = change('88.123456');
    else if (what === 'zeros') lines[row] = `${lines[row]}${'\0'.repeat(20)}`;
    else if (what === 'quote') lines[row] = change('"88.5"');
  }
  return lines.join('\n');
}

describe('a file cut into pieces', () => {
  it.each(ODD_FILES)('$name', ({ content }) => {
    const bytes = bytesOf(content);
    fc.assert(
      fc.property(someCuts, (cuts) => {
        const joined = readCut(bytes, cuts);
        if (joined) expect(inFull(joined)).toEqual(inFull(inOneGo(bytes)));
      }),
      { numRuns: 4 },
    );
  });

  it('gives the same table, whatever the dialect and whatever happened to its lines', () => {
    let joinedCount = 0;
    let tried = 0;
    fc.assert(
      fc.property(dialects, faults, someCuts, fc.integer({ min: 30, max: 100 }), (dialect, list, cuts, rows) => {
        const value = (i: number, k: number) =>
          i % (7 + k) === 0 ? Number.NaN : Math.round(1e3 * Math.sin(i / 9 + k)) / 10 ** k;
        const columns = ['RPM', 'Oil Temp', 'Coolant Temp', 'Oil Press', 'OAT'].map((name, k) => ({
          name,
          unit: ['rpm', 'degC', 'degC', 'psi', 'degC'][k] ?? '',
          decimals: k % 4,
          values: Array.from({ length: rows }, (_, i) => value(i, k % 4)),
        }));
        const text = withFaults(writeTable(columns, rows, dialect), list, dialect.delimiter);
        const bytes = encodeText(text, dialect.encoding);
        tried += 1;
        const joined = readCut(bytes, cuts);
        if (!joined) return;
        joinedCount += 1;
        expect(inFull(joined)).toEqual(inFull(inOneGo(bytes)));
      }),
      { numRuns: 160 },
    );
    // Reading in one go is what remains for quotes and the like, not for most files.
    expect(joinedCount).toBeGreaterThan(0.3 * tried);
  });

  it('is read in one go where a quoted cell spans lines', () => {
    const rows = Array.from({ length: 80 }, (_, i) => `${i},2500,"note ${i}\nof two lines",${80 + i / 10}`);
    const bytes = bytesOf(`Time (s),RPM,Note,Oil Temp (degC)\n${rows.join('\n')}\n`);
    expect(readCut(bytes, [0.5])).toBeNull();
    expect(inOneGo(bytes).rows).toBe(80);
  });
});
