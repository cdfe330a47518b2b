/** One sample of every part of a page: looked at on /specimens, and held by the tests. Invented figures. */
import type { Comparison, Result } from '../analysis/results/index.ts';
import type { Chart } from './charts/chart.ts';
import type { KeptResult } from './pages/kept.ts';

export const COMPARISONS: readonly Comparison[] = [
  {
    what: 'coolant, 2500 rpm, door 100 %: settles on the hot day, against the limit',
    limit: 385.15,
    unit: 'K',
    value: 371.4,
    u95: 4.6,
    outcome: 'shown',
    words: 'shown, uncertainty and margin included',
  },
  {
    what: 'coolant, 2500 rpm, door 60 %: settles on the hot day, against the limit',
    limit: 385.15,
    unit: 'K',
    value: 383.2,
    u95: 5.1,
    outcome: 'not shown',
    words: 'not shown: the uncertainty reaches past the limit or its margin',
  },
  {
    what: 'coolant, 2500 rpm, door 30 %: settles on the hot day, against the limit',
    limit: 385.15,
    unit: 'K',
    value: 391.3,
    u95: 3.4,
    outcome: 'exceeded',
    words: 'exceeded, even allowing for the uncertainty',
  },
];

const RESULT: Result = {
  kind: 'cooling-ground',
  status: 'reduced',
  quantities: [
    {
      name: 'equilibrium',
      value: 371.4,
      unit: 'K',
      u95: 1.2,
      parts: { noise: 0.4, calibration: 1.1 },
      conditions: {
        segment: '2500 rpm, door 100 %',
        'engine-speed': { value: 41.6667, unit: '1/s' },
        'cooling-fan-state': true,
      },
      flags: [],
    },
    {
      name: 'equilibrium',
      value: null,
      unit: 'K',
      u95: null,
      interval: [376.2, null],
      parts: {},
      conditions: { segment: '3200 rpm, door 100 %' },
      flags: [{ kind: 'bound-only', message: 'the run is too short to bound it above' }],
    },
  ],
  tables: [
    {
      name: 'segments',
      columns: [
        { name: 'label', unit: 'none' },
        { name: 'equilibrium', unit: 'K' },
        { name: 'equilibrium-u95', unit: 'dK' },
        { name: 'from-seconds', unit: 's' },
        { name: 'to-seconds', unit: 's' },
      ],
      rows: [
        ['2500 rpm, door 100 %', 371.4, 1.2, 300, 960],
        ['3200 rpm, door 100 %', null, null, 980, 1100],
      ],
    },
  ],
  segments: [],
  comparisons: [...COMPARISONS],
  flags: [
    { kind: 'regulated', message: '1800 rpm: the thermostat was still closing', fromSeconds: 120, toSeconds: 290 },
    { kind: 'regulated', message: '2100 rpm: the thermostat was still closing', fromSeconds: 300, toSeconds: 420 },
    { kind: 'assumed-value', message: 'the sensor’s lag was taken as 6 s' },
  ],
  provenance: { files: [], configurationRevision: 1, methodVersion: 'specimen 1' },
};

export const KEPT_RESULT: KeptResult = {
  number: 7,
  kind: 'cooling-ground',
  at: '2031-05-04T13:03:00Z',
  who: 'Ines Corbeau',
  status: 'proposed',
  decision: 'proposed',
  note: '',
  decidedAt: null,
  decidedBy: null,
  stale: [],
  input: { logs: [] },
  logNames: ['ground-run-2.csv'],
  tests: [],
  result: RESULT,
};

export const OUTCOMES: readonly string[] = [
  'shown',
  'not shown',
  'exceeded',
  'reduced',
  'accepted',
  'repeat',
  'stale',
  'refused',
  'planned',
  'briefed',
  'flown',
  'not applicable',
  'waived',
  'read',
  'asks',
  'not read',
];

const minutes = Array.from({ length: 90 }, (_, i) => i * 20);

export const CHART: Chart = {
  title: 'A run to its limit',
  summary: 'Coolant rises from 20 to 98 °C in half an hour; oil follows to 91 °C. Caution 105 °C, limit 112 °C.',
  x: { label: 'Time from the first record', unit: '', clock: true },
  left: { label: 'Temperature', unit: '°C', includes: [112] },
  datasets: [
    { label: 'Coolant', axis: 'left', draw: 'line', x: minutes, y: minutes.map((t) => 98 - 78 * Math.exp(-t / 400)) },
    {
      label: 'Oil',
      axis: 'left',
      draw: 'line',
      x: minutes,
      y: minutes.map((t) => (t > 900 && t < 1000 ? null : 91 - 71 * Math.exp(-t / 700))),
    },
    { label: 'Predicted', axis: 'left', draw: 'dashed', x: [0, 1780], y: [99, 99] },
    {
      label: 'Written on the card',
      axis: 'left',
      draw: 'points',
      x: [300, 900, 1500],
      y: [62, 90, 96],
      half: [3, 2, null],
    },
  ],
  limits: [
    { label: 'limit 112 °C', axis: 'left', value: 112, weight: 'limit' },
    { label: 'caution 105 °C', axis: 'left', value: 105, weight: 'caution' },
  ],
  spans: [{ label: '1', from: 300, to: 960 }],
};
