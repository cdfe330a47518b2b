/** Gates on published weight-and-balance examples; each case is named by its source. */
import { describe, expect, it } from 'vitest';
import { measureWeight, WEIGHT_UNITS } from './measure-weight.ts';
import { deviations, readTruth } from './truth-set.ts';

const truth = readTruth('weight-balance');

describe.each(truth.cases)('$source: $id', (one) => {
  it('is reproduced to the last printed digit', () => {
    const all = deviations(one, measureWeight(one), WEIGHT_UNITS);
    expect(all.length).toBeGreaterThan(0);
    for (const d of all) {
      expect(Math.abs(d.got - d.expected), `${d.key}: printed ${d.expected}, got ${d.got}`).toBeLessThanOrEqual(
        d.tolerance,
      );
    }
  });
});

describe('AC 43.13-1B, figure 10-13', () => {
  it('is an erratum: the printed quotient is not that of the printed totals', () => {
    const one = truth.cases.find((found) => found.id === 'wb-4313-maxpax');
    expect(one?.erratum).toContain('18.6');
    expect(Math.abs(38466 / 2100 - 18.6)).toBeGreaterThan(0.2);
  });
});
