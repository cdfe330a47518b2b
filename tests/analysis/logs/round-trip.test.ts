/** A table written in any dialect reads back as the same table; the byte parser agrees with Number for what it takes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLogBytes } from '../../../analysis/logs/index.ts';
import { parsePlainNumber } from '../../../analysis/logs/rows/parse-number.ts';

const OPTIONS = { file: 'x.csv', sha256: '0'.repeat(64) };
const tenths = fc.integer({ min: 600, max: 1100 }).map((n) => n / 10);

const dialect = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  comma: fc.boolean(),
  end: fc.constantFrom('\n', '\r\n', '\r'),
  quote: fc.boolean(),
  preamble: fc.integer({ min: 0, max: 5 }),
  unitsRow: fc.boolean(),
  trailing: fc.boolean(),
});

describe('round trip', () => {
  it('gives every value back, whatever the dialect', () => {
    fc.assert(
      fc.property(dialect, fc.array(fc.tuple(tenths, tenths), { minLength: 12, maxLength: 60 }), (d, rows) => {
        const comma = d.comma && d.delimiter !== ',';
        const cell = (text: string) => (d.quote ? `"${text}"` : text);
        const number = (value: number) => cell(comma ? value.toFixed(1).replace('.', ',') : value.toFixed(1));
        const line = (cells: string[]) => cells.join(d.delimiter) + (d.trailing ? d.delimiter : '');
        const names = d.unitsRow
          ? [line(['Time', 'Coolant Temp', 'Oil Temp'].map(cell)), line(['s', 'degC', 'degC'].map(cell))]
          : [line(['Time (s)', 'Coolant Temp (degC)', 'Oil Temp (degC)'].map(cell))];
        const notes = Array.from({ length: d.preamble }, (_, i) => `note ${i}`);
        const body = rows.map(([a, b], i) => line([number(i), number(a), number(b)]));
        const text = [...notes, ...names, ...body, ''].join(d.end);
        const outcome = readLogBytes(new TextEncoder().encode(text), OPTIONS);
        expect(outcome.accepted, JSON.stringify(outcome.problems.concat(outcome.questions as never))).toBe('yes');
        const channel = (quantity: string) =>
          outcome.table?.channels.find((one) => one.quantity === quantity)?.values ?? [];
        const back = (values: ArrayLike<number>) => Array.from(values, (si) => Number((si - 273.15).toFixed(3)));
        expect(back(channel('coolant-temperature'))).toEqual(rows.map(([a]) => a));
        expect(back(channel('oil-temperature'))).toEqual(rows.map(([, b]) => b));
      }),
      { numRuns: 150 },
    );
  });

  it('reads a plain number as Number does, to the last bit', () => {
    const written = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }).map((value) => value.toFixed(6)),
      fc.integer().map(String),
      fc.tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 0, max: 999 })).map(([a, b]) => `${a}.${b}`),
    );
    fc.assert(
      fc.property(written, (text) => {
        const bytes = new TextEncoder().encode(text);
        const got = parsePlainNumber(bytes, 0, bytes.length, 46);
        if (!Number.isNaN(got)) expect(got).toBe(Number(text));
      }),
      { numRuns: 2000 },
    );
  });
});
