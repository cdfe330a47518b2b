import { describe, expect, it } from 'vitest';
import type { Result } from '../../../analysis/results/index.ts';
import { chartsOf } from '../../../templates/charts/index.ts';
import { traceChart, traceDataset, traceGroups } from '../../../templates/charts/trace.ts';
import { USUAL_UNITS } from '../../../templates/words/unit-shown.ts';

const plain: Result = {
  kind: 'airspeed',
  status: 'reduced',
  quantities: [],
  tables: [],
  segments: [],
  comparisons: [],
  flags: [],
  provenance: { files: [], configurationRevision: null, methodVersion: 'x' },
};
const column = (name: string, unit: string) => ({ name, unit });

describe('charts of a result', () => {
  it('of ground cooling: traces, fits, limits as lines, segments as boxes that can be moved', () => {
    const model = {
      traces: [
        {
          file: 'a.csv',
          startSeconds: 10,
          stepSeconds: 5,
          temperatures: [{ quantity: 'coolant-temperature', values: [300, null, 371.25] }],
          oil: null,
          air: [294, 294, 294],
        },
      ],
      curves: [{ file: 'a.csv', seconds: [10, 20], values: [300, 370] }],
      limits: { caution: 378.15, limit: 385.15, part: 'coolant' },
    };
    const segments = [
      { file: 'other.csv', fromSeconds: 0, toSeconds: 5, role: 'hold', means: {} },
      { file: 'a.csv', fromSeconds: 10, toSeconds: 20, role: 'hold', means: {} },
    ];
    const [chart] = chartsOf({ ...plain, kind: 'cooling-ground', model, segments }, USUAL_UNITS);
    expect(chart?.datasets.map((one) => [one.label, one.draw])).toEqual([
      ['Coolant temperature', 'line'],
      ['Outside air', 'line'],
      ['Fitted, and beyond the run', 'dashed'],
    ]);
    expect(chart?.datasets[0]?.x).toEqual([10, 15, 20]);
    expect(chart?.datasets[0]?.y.map((one) => one && Math.round(one * 100) / 100)).toEqual([26.85, null, 98.1]);
    expect(chart?.limits.map((one) => [one.label, one.weight])).toEqual([
      ['caution 105 °C', 'caution'],
      ['limit 112 °C', 'limit'],
    ]);
    expect(chart?.spans).toEqual([{ label: '2', from: 10, to: 20, edits: 1 }]);
    expect(chart?.summary).toContain('Coolant temperature reaches 98 °C');
  });

  it('of an airspeed calibration: a correction is a difference, with its U95', () => {
    const result: Result = {
      ...plain,
      tables: [
        {
          name: 'position-error',
          columns: [
            column('indicated-airspeed', 'm/s'),
            column('correction', 'm/s'),
            column('u95', 'm/s'),
            column('flaps', 'none'),
          ],
          rows: [
            [36.0111, 0.5144, 0.2572, 'up'],
            [null, 0.1, 0.1, 'up'],
          ],
        },
      ],
    };
    const [chart] = chartsOf(result, USUAL_UNITS);
    expect(chart?.datasets).toHaveLength(1);
    const [measured] = chart?.datasets ?? [];
    expect(
      [measured?.x, measured?.y, measured?.half].map((list) => list?.map((one) => one && Number(one.toFixed(2)))),
    ).toEqual([[70], [1], [0.5]]);
  });

  it('are none for a kind without its own, and none where the model is not as expected', () => {
    expect(chartsOf({ ...plain, kind: 'compass' }, USUAL_UNITS)).toEqual([]);
    expect(chartsOf({ ...plain, kind: 'cooling-ground', model: { traces: 'odd' } }, USUAL_UNITS)).toEqual([]);
  });
});

describe('traces', () => {
  const channels = [
    { column: 'CLT', quantity: 'coolant-temperature', unit: 'K' },
    { column: 'OAT', quantity: 'outside-air-temperature', unit: 'K' },
    { column: 'RPM', quantity: 'engine-speed', unit: '1/s' },
    { column: 'odd', quantity: null, unit: null },
  ];

  it('share a chart only where they share a unit', () => {
    expect(traceGroups(channels, USUAL_UNITS)).toEqual([
      { unit: 'degC', columns: ['CLT', 'OAT'] },
      { unit: 'rpm', columns: ['RPM'] },
      { unit: '', columns: ['odd'] },
    ]);
  });

  it('are told in words with their ends', () => {
    const dataset = traceDataset(
      { column: 'CLT', quantity: 'coolant-temperature', unit: 'K', x: [0, 1, 2], y: [293.15, null, 373.15] },
      USUAL_UNITS,
    );
    const chart = traceChart('Coolant', [dataset], 'degC', { samples: '/s', spans: [], seconds: 2 });
    expect(chart.summary).toBe('Coolant temperature runs from 20 to 100 °C.');
    expect(chart.whole).toEqual({ from: 0, to: 2 });
  });
});
