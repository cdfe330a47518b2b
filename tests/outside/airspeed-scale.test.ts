/** Gates on published airspeed conversions and probe recovery; each case is named by its source. */
import { describe, expect, it } from 'vitest';
import { measureAirspeed, SPECIAL } from './measure-air.ts';
import { deviations, readTruth } from './truth-set.ts';

const truth = readTruth('airspeed-conversions');

describe.each(truth.cases)('$source: $id', (one) => {
  it('is reproduced', () => {
    const all = deviations(one, measureAirspeed(one), SPECIAL);
    expect(all.length).toBeGreaterThan(0);
    for (const d of all) {
      expect(Math.abs(d.got - d.expected), `${d.key}: printed ${d.expected}, got ${d.got}`).toBeLessThanOrEqual(
        d.tolerance,
      );
    }
  });
});
