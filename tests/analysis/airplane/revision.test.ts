/** Two revisions compared: each change once, in the words of the file. */
import { describe, expect, it } from 'vitest';
import { changedFacts, compareRevisions } from '../../../analysis/airplane/index.ts';
import { airplaneFrom, demo, demoJson } from '../demo-airplanes.ts';

describe('comparing revisions', () => {
  const ouzel = demo('ouzel');

  it('finds nothing between equal descriptions', () => {
    expect(compareRevisions(ouzel, demo('ouzel'))).toEqual([]);
    expect(changedFacts(ouzel, demo('ouzel'))).toEqual([]);
  });

  it('takes a stated number as one change', () => {
    const hotter = demo('ouzel', { limits: { coolant: { caution: { value: 104 } } } });
    expect(compareRevisions(ouzel, hotter).map((one) => one.words)).toEqual([
      'limits.coolant.caution: 105 degC, now 104 degC',
    ]);
  });

  it('tells what is new and what is gone, and names places of a list', () => {
    const json = demoJson('ouzel');
    const loading = json.loading;
    if (!loading || !Array.isArray(loading.stations)) throw new Error('no stations');
    loading.stations = loading.stations.slice(0, -1);
    const changes = compareRevisions(ouzel, airplaneFrom(json));
    expect(changes.map((one) => one.path)).toEqual(['loading.stations.tail ballast']);
    expect(changes[0]?.words).toContain('now not stated');
  });

  it('sees which facts changed', () => {
    const fixed = demo('ouzel', { propeller: { kind: 'fixed' } });
    expect(changedFacts(ouzel, fixed)).toEqual([
      {
        name: 'propeller',
        path: 'propeller.kind',
        before: 'constant-speed',
        after: 'fixed',
        was: 'has a constant-speed propeller',
        is: 'has a fixed-pitch propeller',
      },
    ]);
  });
});
