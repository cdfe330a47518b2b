/** A small run of the coverage of ground cooling; the large one is `npm run bench:coverage`. */
import { describe, expect, it } from 'vitest';
import { HONEST_DAYS } from './cooling-days.ts';
import { coverageOfDay, falseShown, upperEndHolds, valuesOnSilentDays } from './cooling-ground.ts';
import { coverageLines, shareOf } from './coverage-row.ts';

/** The pieces of one run share their sensor's error: so many runs know a share to about this at 95 %. */
const slack = (runs: number) => 2 * Math.sqrt((0.95 * 0.05) / runs);
const RUNS = 24;

describe('equilibria of simulated ground runs', () => {
  it.each(HONEST_DAYS.map((one) => [one.name, one] as const))('%s', (_, trial) => {
    const { row, withheld, long, astride } = coverageOfDay(trial, RUNS);
    const [line] = coverageLines([row]);
    expect(shareOf(row), line).toBeGreaterThanOrEqual(trial.wanted[0] - slack(RUNS));
    expect(row.refused, line).toBe(0);
    expect(astride, 'pieces that reach into another condition').toBe(0);
    expect(withheld / long, `${withheld} of ${long} long pieces without an equilibrium`).toBeLessThanOrEqual(
      trial.withheld,
    );
  });

  it('a slow part no trace shows stays under the upper end', () => {
    const { share, of } = upperEndHolds(RUNS);
    expect(of).toBeGreaterThan(RUNS);
    expect(share).toBeGreaterThanOrEqual(0.975 - slack(RUNS));
  });

  it('gives no value where there is none: regulated, cycling, cut short, switched unseen', () => {
    for (const { name, values, rows } of valuesOnSilentDays(12)) {
      expect(rows, name).toBeGreaterThan(12);
      expect(values, `${name}: values given`).toBe(0);
    }
  });

  it('never calls shown what settles at its limit', () => {
    const { shown, of } = falseShown(RUNS);
    expect(of).toBeGreaterThanOrEqual(RUNS / 2);
    expect(shown / of).toBeLessThanOrEqual(0.025);
  });
});
