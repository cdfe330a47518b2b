/** A small run of the coverage of cooling climbs; the large one is `npm run bench:coverage`. */
import { describe, expect, it } from 'vitest';
import { coverageOfClimb, falseShownClimbs, HONEST_CLIMBS, valuesOnSilentClimbs } from './cooling-climb.ts';
import { coverageLines, shareOf } from './coverage-row.ts';

const RUNS = 20;
const slack = (runs: number) => 2 * Math.sqrt((0.95 * 0.05) / runs);

describe('peaks of simulated climbs', () => {
  it.each(HONEST_CLIMBS.map((one) => [one.name, one] as const))('%s', (_, one) => {
    const { rows, withheld } = coverageOfClimb(one, RUNS);
    for (const row of rows) {
      const [line] = coverageLines([row]);
      expect(row.of, line).toBeGreaterThan(RUNS / 2);
      expect(shareOf(row), line).toBeGreaterThanOrEqual(one.wanted[0] - slack(row.of));
      expect(row.refused, line).toBe(0);
    }
    expect(withheld / RUNS).toBeLessThanOrEqual(0.2);
  });

  it('gives no margin where there is none: regulated throughout, levelled off before the peak', () => {
    for (const { name, values } of valuesOnSilentClimbs(8)) expect(values, name).toBe(0);
  });

  it('hardly ever calls shown what on the hot day lies exactly at its limit', () => {
    const { shown, of } = falseShownClimbs(2 * RUNS);
    expect(of).toBeGreaterThan(RUNS);
    // 2.5 % of forty are one; three are what chance gives once in fifty such runs
    expect(shown).toBeLessThanOrEqual(3);
  });
});
