import { describe, expect, it } from 'vitest';
import { taxiCut } from '../../../sample-tests/generate/taxi-cut.ts';

describe('taxi log of the samples', () => {
  it('ends in the middle of a line, as a power cut leaves it', () => {
    const { csv, truth } = taxiCut();
    expect(csv.endsWith('\n')).toBe(false);
    const lines = csv.split('\n');
    const header = lines.findIndex((line) => line.startsWith('Date,'));
    const columns = (lines[header] ?? '').split(',').length;
    expect(lines.slice(header + 1, -1)).toHaveLength(truth.wholeRows);
    for (const line of lines.slice(header + 1, -1)) expect(line.split(',')).toHaveLength(columns);
    expect((lines.at(-1) ?? '').split(',').length).toBeLessThan(columns);
  });
});
