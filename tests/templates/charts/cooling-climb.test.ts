import { describe, expect, it } from 'vitest';
import type { Result } from '../../../analysis/results/index.ts';
import { chartsOf } from '../../../templates/charts/index.ts';
import { USUAL_UNITS } from '../../../templates/words/unit-shown.ts';

const seconds = [0, 60, 120, 180];
const trace = {
  climb: 'climb',
  file: 'a.csv',
  fromSeconds: 60,
  toSeconds: 180,
  seconds,
  temperature: [350, 360, 371.15, 366],
  corrected: [null, 372, 383.15, 378],
  regulated: [false, true, false, false],
  air: [300, 298, 296, 294],
  peakSeconds: 120,
  highest: 371.15,
  leastMarginSeconds: 180,
  caution: 378.15,
  limit: 385.15,
  ahead: null,
};
const head = { ...trace, quantity: 'cylinder-head-temperature#1', caution: null, limit: null, corrected: null };
const result: Result = {
  kind: 'cooling-climb',
  status: 'reduced',
  quantities: [],
  tables: [],
  segments: [{ file: 'a.csv', fromSeconds: 60, toSeconds: 180, role: 'climb', means: {} }],
  comparisons: [],
  flags: [],
  provenance: { files: [], configurationRevision: null, methodVersion: 'x' },
  model: {
    traces: [
      { ...trace, quantity: 'coolant-temperature' },
      head,
      {
        ...head,
        quantity: 'cylinder-head-temperature#2',
        highest: 380,
        ahead: { seconds: [180, 210], expected: [366, 367], high: [369, 371] },
      },
    ],
  },
};

describe('charts of a cooling climb', () => {
  const [coolant, heads, ...others] = chartsOf(result, USUAL_UNITS);

  it('are one for each kind of temperature, heads together', () => {
    expect(others).toEqual([]);
    expect([coolant?.title, heads?.title]).toEqual(['Coolant temperature, climb', 'Cylinder head temperature, climb']);
    expect(coolant?.datasets.map((one) => [one.label, one.draw])).toEqual([
      ['Coolant temperature', 'line'],
      ['On the hot day', 'dashed'],
      ['Outside air', 'line'],
    ]);
    expect(heads?.datasets.map((one) => one.label)).toEqual([
      'Cylinder head temperature 1',
      'Cylinder head temperature 2',
      'Had it climbed on, cylinder head temperature 2',
      'Had it climbed on, at most, cylinder head temperature 2',
      'Outside air',
    ]);
  });

  it('draw limits across, and mark the peak and the least margin where they stand apart', () => {
    expect(coolant?.limits.map((one) => [one.label, one.axis])).toEqual([
      ['caution 105 °C', 'left'],
      ['limit 112 °C', 'left'],
      ['highest 98 °C', 'x'],
      ['least margin', 'x'],
    ]);
    // of several heads the hottest one's
    expect(heads?.limits.map((one) => one.label)).toEqual(['highest 107 °C', 'least margin']);
  });

  it('let the climb’s ends be moved, and say in words what is drawn', () => {
    expect(coolant?.spans[0]).toEqual({ label: 'climb', from: 60, to: 180, edits: 0 });
    expect(coolant?.summary).toBe(
      'Coolant temperature reaches 98 °C, 110 °C on the hot day. Lines: caution 105 °C, limit 112 °C.',
    );
    expect(heads?.summary).toContain('had not peaked');
  });

  it('are none where the result carries no traces', () => {
    expect(chartsOf({ ...result, model: {} }, USUAL_UNITS)).toEqual([]);
  });
});
