/** A table written in any dialect reads back as the same table, and both ways of reading rows agree. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLogBytes } from '../../../analysis/logs/index.ts';
import { parsePlainNumber } from '../../../analysis/logs/rows/parse-number.ts';
import { toSi } from '../../../analysis/units/index.ts';
import { encodeText, type WrittenColumn, type WrittenDialect, writeTable } from './write-dialect.ts';

const OPTIONS = { file: 'x.csv', sha256: '0'.repeat(64) };

const dialect: fc.Arbitrary<WrittenDialect> = fc.record({
  encoding: fc.constantFrom('utf-8', 'utf-8-mark', 'utf-16le', 'utf-16be', 'latin-1'),
  delimiter: fc.constantFrom(',', ';', '\t', '|', 'fixed'),
  decimal: fc.constantFrom('.', ','),
  thousands: fc.boolean(),
  quote: fc.constantFrom('none', 'all', 'text'),
  end: fc.constantFrom('\n', '\r\n', '\r', 'mixed'),
  preamble: fc.integer({ min: 0, max: 40 }),
  comments: fc.boolean(),
  units: fc.constantFrom('row', 'header', 'suffix'),
  trailing: fc.boolean(),
  finalEnd: fc.boolean(),
  time: fc.constantFrom('elapsed', 'date-time', 'iso', 'epoch', 'twelve-hour'),
  blanks: fc.boolean(),
});

/** Readings that wander as readings do, some of them missing. */
const wandering = (low: number, high: number, step: number) =>
  fc
    .tuple(
      fc.double({ min: low, max: high, noNaN: true }),
      fc.array(fc.integer({ min: -10, max: 10 }), { minLength: 12, maxLength: 60 }),
    )
    .map(([start, steps]) => {
      let value = start;
      return steps.map((by) => {
        value = Math.min(high, Math.max(low, value + 0.1 * by * step));
        return by === 10 && value !== start ? Number.NaN : value;
      });
    });

const columns = fc.tuple(
  wandering(80, 105, 1),
  wandering(2000, 2600, 40),
  wandering(1000, 1900, 30),
  wandering(-20, 30, 0.5),
);
const shapes = [
  { name: 'Coolant Temp', unit: 'degC', decimals: 1, quantity: 'coolant-temperature' },
  { name: 'Engine RPM', unit: 'rpm', decimals: 2, quantity: 'engine-speed' },
  { name: 'PALT', unit: 'ft', decimals: 1, quantity: 'pressure-altitude' },
  { name: 'OAT', unit: '°C', decimals: 3, quantity: 'outside-air-temperature' },
];

describe('round trip', () => {
  it('gives every value back, whatever the dialect, by either way', () => {
    fc.assert(
      fc.property(dialect, columns, (given, lists) => {
        const d: WrittenDialect = possible(given);
        const rows = Math.min(...lists.map((one) => one.length));
        const written: WrittenColumn[] = shapes.map((shape, i) => ({ ...shape, values: lists[i] ?? [] }));
        // The last row is whole: a missing last cell could as well be a cut one.
        for (const one of written)
          one.values = one.values
            .slice(0, rows)
            .map((value, i) => (i === rows - 1 && Number.isNaN(value) ? 1.5 : value));
        const bytes = encodeText(writeTable(written, rows, d), d.encoding);
        for (const exact of [false, true]) {
          const outcome = readLogBytes(bytes, { ...OPTIONS, exact });
          const said = JSON.stringify([d, outcome.problems, outcome.questions, outcome.flags]);
          expect(outcome.rows, said).toBe(rows);
          expect(outcome.time.durationSeconds, said).toBeCloseTo(rows - 1, 6);
          for (const [i, { quantity, unit, decimals }] of shapes.entries()) {
            const channel = outcome.table?.channels.find((one) => one.quantity === quantity);
            const id = unit === '°C' ? 'degC' : unit;
            const wanted = written[i]?.values.map((value) => toSi(Number(value.toFixed(decimals)), id));
            // Without a line end the last cell may be a cut one, and is then left out with a remark.
            const cut = i === shapes.length - 1 && outcome.flags.some((one) => one.kind === 'truncated-last-line');
            if (cut && wanted) wanted[rows - 1] = Number.NaN;
            const doubtful = channel?.flags.some((one) => one.kind === 'spike') === true;
            if (!doubtful) expect(Array.from(channel?.values ?? []), `${quantity} ${said}`).toEqual(wanted);
          }
        }
      }),
      { numRuns: 250 },
    );
  });

  it('reads a plain number as Number does, to the last bit', () => {
    const figures = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }).map((value) => value.toFixed(6)),
      fc.integer().map(String),
      fc.tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 0, max: 999 })).map(([a, b]) => `${a}.${b}`),
    );
    fc.assert(
      fc.property(figures, (text) => {
        const bytes = new TextEncoder().encode(text);
        const got = parsePlainNumber(bytes, 0, bytes.length, 46);
        if (!Number.isNaN(got)) expect(got).toBe(Number(text));
      }),
      { numRuns: 2000 },
    );
  });
});

/** What no recorder writes: commas that part cells and figures alike, without quotes. */
function possible(d: WrittenDialect): WrittenDialect {
  const fixed = d.delimiter === 'fixed';
  const commas = d.delimiter === ',' && d.decimal === ',';
  return {
    ...d,
    decimal: commas && d.quote !== 'all' ? '.' : d.decimal,
    quote: fixed ? 'none' : d.quote,
    thousands: d.thousands && !fixed,
    // A fixed file with blank cells parts by position only; a clock with a blank in it does not stand in words.
    time: fixed && d.time === 'twelve-hour' ? 'elapsed' : d.time,
    trailing: d.trailing && !fixed,
    preamble: d.comments ? Math.min(d.preamble, 40) : d.preamble,
  };
}
