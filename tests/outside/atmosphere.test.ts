/** Gates on published atmosphere values; each case is named by its source. Tolerances: the last printed digit. */
import { describe, expect, it } from 'vitest';
import { measureAtmosphere, SPECIAL } from './measure-air.ts';
import { deviations, readTruth } from './truth-set.ts';

const truth = readTruth('atmosphere');

describe.each(truth.cases)('$source: $id', (one) => {
  it('is reproduced', () => {
    const all = deviations(one, measureAtmosphere(one), SPECIAL);
    expect(all.length).toBeGreaterThan(0);
    for (const d of all) {
      expect(Math.abs(d.got - d.expected), `${d.key}: printed ${d.expected}, got ${d.got}`).toBeLessThanOrEqual(
        d.tolerance,
      );
    }
  });
});
