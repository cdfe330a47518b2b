import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { accuracyOf, DEFAULT_ACCURACY, readAirplane } from '../../../analysis/airplane/index.ts';
import { quantityOf, unitOf } from '../../../analysis/units/index.ts';

const ouzelFile = () => JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8'));
const withAccuracy = (accuracy: object) => {
  const json = ouzelFile();
  json.instruments.accuracy = accuracy;
  return readAirplane(json, 'ouzel');
};

describe('accuracy of a channel', () => {
  it('is the airplane’s own where one is on record, with its basis', () => {
    const { airplane } = readAirplane(ouzelFile());
    if (!airplane) throw new Error('the demo airplane does not read');
    const coolant = accuracyOf(airplane, 'coolant-temperature');
    expect(coolant).toMatchObject({ u: 0.5, gain: 0, nu: 50, assumed: false });
    expect(coolant.basis).toContain('boiling water');
  });

  it('is a default marked as assumed otherwise, by base name', () => {
    expect(accuracyOf(undefined, 'cylinder-head-temperature#3')).toMatchObject({ u: 2.5, assumed: true });
    expect(accuracyOf(undefined, 'engine-speed')).toMatchObject({ u: 0, gain: 0.0025, assumed: true });
    expect(accuracyOf(undefined, 'event-mark')).toMatchObject({ u: 0, gain: 0, assumed: true });
  });

  it('takes a stated maximum error as rectangular and a percentage as a gain', () => {
    const { airplane } = withAccuracy({
      'coolant-temperature': { u95: 3, unit: 'dF', distribution: 'rectangular', basis: 'sensor sheet' },
      'fuel-flow': { u95: 2, unit: '%', basis: 'three fills' },
    });
    if (!airplane) throw new Error('the airplane does not read');
    expect(accuracyOf(airplane, 'coolant-temperature').u).toBeCloseTo((3 * 5) / 9 / Math.sqrt(3), 12);
    expect(accuracyOf(airplane, 'coolant-temperature').nu).toBe(Number.POSITIVE_INFINITY);
    expect(accuracyOf(airplane, 'fuel-flow')).toMatchObject({ u: 0, gain: 0.01 });
  });

  it('refuses an accuracy in a unit of something else, naming the field', () => {
    const { problems } = withAccuracy({ 'coolant-temperature': { u95: 3, unit: 'degC', basis: 'sheet' } });
    expect(problems[0]?.where.field).toBe('instruments.accuracy.coolant-temperature.unit');
  });

  it('has defaults only for quantities of the glossary, in units that fit them', () => {
    for (const row of DEFAULT_ACCURACY) {
      for (const name of row.quantities) {
        const dimension = quantityOf(name)?.dimension;
        if (row.offset === 0) continue;
        const wanted = dimension === 'temperature' ? 'temperature-difference' : dimension;
        expect(unitOf(row.unit).dimension, name).toBe(wanted);
      }
    }
  });
});
