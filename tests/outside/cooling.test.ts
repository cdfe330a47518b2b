/** Gates on the published hot-day rules and boiling points; each case is named by its source. */
import { describe, expect, it } from 'vitest';
import { measureBoiling, measureCooling } from './measure-cooling.ts';
import { deviations, readTruth, type TruthCase } from './truth-set.ts';

const SETS = [
  { name: 'cooling', measure: measureCooling, least: 19 },
  { name: 'coolant-boiling', measure: measureBoiling, least: 18 },
];

describe.each(SETS)('$name', ({ name, measure, least }) => {
  const { cases } = readTruth(name);

  it('holds all the cases carried over', () => {
    expect(cases.length).toBeGreaterThanOrEqual(least);
  });

  it.each(cases.map((one): [string, TruthCase] => [`${one.source}: ${one.id}`, one]))('%s', (_, one) => {
    const all = deviations(one, measure(one));
    expect(all.length).toBeGreaterThan(0);
    for (const d of all) {
      expect(Math.abs(d.got - d.expected), `${d.key}: printed ${d.expected}, got ${d.got}`).toBeLessThanOrEqual(
        d.tolerance,
      );
    }
  });
});

describe('what published figures disagree about is left to the uncertainty', () => {
  it('a 50/50 mix under 15 psi boils inside the published band of 250 to 268 F', () => {
    const one: TruthCase = {
      id: 'band',
      group: 'ethylene-mix',
      source: 'three secondary sources',
      mark: 'read',
      inputs: { fraction: 0.5, cap_psi: 15 },
      expected: { boiling_F: 259 },
      tolerance: { boiling_F: 9 },
    };
    for (const d of deviations(one, measureBoiling(one)))
      expect(Math.abs(d.got - d.expected)).toBeLessThanOrEqual(d.tolerance);
  });
});
