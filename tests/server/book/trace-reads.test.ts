/** What a reduction reads of the airplane is noted by path, so that a change of it can be told from any other. */
import { describe, expect, it } from 'vitest';
import { changedPaths, traceReads, valueAt } from '../../../server/book/trace-reads.ts';

const airplane = () => ({
  name: 'Ouzel',
  limits: { coolant: { caution: { value: 105, unit: 'degC', si: 378.15 } } as Record<string, unknown> },
  tanks: [{ name: 'left' }, { name: 'right' }],
});

describe('reads of a description', () => {
  it('are noted where a value was taken, and only there', () => {
    const { watched, reads } = traceReads(airplane());
    const caution = watched.limits.coolant.caution;
    expect(reads()).toEqual([]);
    expect(valueAt(caution, 'si')).toBe(378.15);
    expect(reads()).toEqual(['limits.coolant.caution.si']);
  });

  it('note what was looked for and is not there: adding it later is a change', () => {
    const { watched, reads } = traceReads(airplane());
    expect(watched.limits.coolant.limit).toBeUndefined();
    const later = airplane();
    later.limits.coolant.limit = { value: 112, unit: 'degC', si: 385.15 };
    expect(changedPaths(reads(), airplane(), later)).toEqual(['limits.coolant.limit']);
  });

  it('note the whole of what was listed', () => {
    const { watched, reads } = traceReads(airplane());
    expect(watched.tanks.map((tank) => tank.name)).toEqual(['left', 'right']);
    expect(Object.keys(watched.limits)).toEqual(['coolant']);
    expect(reads()).toEqual(expect.arrayContaining(['limits', 'tanks.0.name', 'tanks.1.name', 'tanks.length']));
  });

  it('read like the original', () => {
    const { watched } = traceReads(airplane());
    expect(JSON.parse(JSON.stringify(watched))).toEqual(airplane());
    expect({ ...watched.limits }).toEqual(airplane().limits);
  });

  it('name a change in the words of a person', () => {
    const after = airplane();
    after.limits.coolant.caution = { value: 106, unit: 'degC', si: 379.15 };
    const reads = ['limits.coolant.caution.si', 'limits.coolant.caution.value', 'name'];
    expect(changedPaths(reads, airplane(), after)).toEqual(['limits.coolant.caution']);
    expect(changedPaths(['name'], airplane(), after)).toEqual([]);
  });
});
