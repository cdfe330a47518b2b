import { describe, expect, it } from 'vitest';
import type { ResultTable } from '../../../analysis/results/index.ts';
import { csvText, resultTableAsCsv, resultTableInWords } from '../../../templates/words/result-table.ts';
import { USUAL_UNITS } from '../../../templates/words/unit-shown.ts';

const table: ResultTable = {
  name: 'segments',
  columns: [
    { name: 'equilibrium', unit: 'K' },
    { name: 'equilibrium-u95', unit: 'dK' },
    { name: 'time-constant', unit: 's' },
    { name: 'time-constant-low', unit: 's' },
    { name: 'time-constant-high', unit: 's' },
    { name: 'from-seconds', unit: 's' },
    { name: 'to-seconds', unit: 's' },
    { name: 'label', unit: 'none' },
  ],
  rows: [
    [371.25, 1.2, 240, 180, 360, 60, 600, '=HYPERLINK("x")'],
    [null, null, null, null, null, 700, 760, 'short'],
  ],
};
const links = { samples: (from: number, to: number) => `/log?from=${from}&to=${to}`, csv: '/t.csv' };

describe('a table of a result', () => {
  const shown = resultTableInWords(table, USUAL_UNITS, links);

  it('puts what a row is first, and value with its uncertainty into one cell', () => {
    expect(shown.columns.map((one) => [one.name, one.unit])).toEqual([
      ['Label', ''],
      ['Equilibrium', '°C'],
      ['Time constant', 'min'],
      ['Samples', 'from, to'],
    ]);
    expect(shown.rows[0]?.cells.map((one) => one.text)).toEqual([
      '=HYPERLINK("x")',
      '98.1 ± 1.2',
      '4 (3 to 6)',
      '1:00 to 10:00',
    ]);
  });

  it('links each row back to its samples', () => {
    expect(shown.rows[1]?.cells.at(-1)?.href).toBe('/log?from=700&to=760');
    expect(shown.rows[1]?.cells[1]?.text).toBe('—');
  });

  it('as CSV is plain numbers in the units shown, and runs no formula', () => {
    const [head, first] = resultTableAsCsv(table, USUAL_UNITS).split('\r\n');
    expect(head).toContain('"equilibrium [degC]"');
    expect(first).toBe('98.1,1.2,4,3,6,60,600,"\'=HYPERLINK(""x"")"');
    expect(['=1', '+1', '-1', '@x', '\tx'].map((text) => csvText(text)[1])).toEqual(["'", "'", "'", "'", "'"]);
  });
});
