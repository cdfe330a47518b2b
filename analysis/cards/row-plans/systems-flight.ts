/** Reading tables of the systems tests in flight. */
import { AUTOPILOT, EXIT_DOOR, RETRACTABLE } from '../../catalogue/index.ts';
import type { RowPlans, TablePlan } from './row-plan.ts';

const levels = (count: number): TablePlan => ({
  at: ['each step of height'],
  layout: 'levels',
  head: 'altimeter',
  rows: { levels: count },
});

export const SYSTEMS_FLIGHT_PLANS: RowPlans = {
  'cooling-climb-heavy': [
    { ...levels(12), title: 'best rate' },
    { ...levels(8), title: 'best angle, then best rate' },
    { ...levels(8), title: 'after the hold' },
    { at: ['each climb'], layout: 'list', head: 'climb', rows: { count: 4 } },
  ],
  'cooling-cruise-door-map': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'door',
      unit: '%',
      without: ['cowl-exit-position'],
      rows: {
        groups: [
          { name: '55 %', rows: ['100', '75', '50', '25', '0'] },
          { name: '65 %', rows: ['100', '75', '50', '25', '0'] },
          { name: '75 %', rows: ['100', '75', '50', '25', '0'] },
        ],
      },
    },
  ],
  'cooling-door-failure-flight': [
    { at: ['each min'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 1, to: 8 } } },
  ],
  'idle-descent-cooling': [
    {
      at: ['highest', 'each'],
      layout: 'list',
      head: 'descent',
      rows: {
        names: [
          { when: EXIT_DOOR, name: 'idle, door shut' },
          { when: EXIT_DOOR, name: 'idle, door half' },
          { when: { not: EXIT_DOOR }, name: 'idle' },
          'with power',
        ],
      },
    },
  ],
  'fuel-flow-calibration-flight': [
    { at: ['each flight'], layout: 'repeats', head: 'flight', rows: { count: 3 } },
    { at: ['15 min'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 15, to: 75 } } },
  ],
  'fuel-transfer-flight': [
    { at: ['each 2 min'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 2, to: 20 } } },
    { at: ['each phase'], layout: 'list', head: 'phase', rows: { names: ['level', 'climb', 'descent'] } },
  ],
  'low-fuel-manoeuvre-feed': [
    {
      at: ['each'],
      layout: 'list',
      head: 'case',
      rows: { names: ['slip left', 'slip right', 'go-around', 'steep descent'] },
    },
  ],
  'electrical-failure-flight': [
    { at: ['each 5 min'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 5, to: 30 } } },
    { at: ['each'], layout: 'list', head: 'no.', rows: { count: 2 } },
  ],
  'battery-failure-flight': [{ at: ['each'], layout: 'list', head: 'off', rows: { own: 'battery' } }],
  'engine-control-failover-flight': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'on',
      rows: {
        groups: [
          { name: 'cruise', rows: ['lane A', 'lane B'] },
          { name: 'climb', rows: ['lane A', 'lane B'] },
          { name: 'idle', rows: ['lane A', 'lane B'] },
          { name: 'cruise', rows: ['feed A', 'feed B'] },
        ],
      },
    },
  ],
  'gear-cycles-flight': [{ at: ['each'], layout: 'cycles', head: 'cycle', rows: { count: 15 } }],
  'electric-trim-runaway-flight': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'run',
      rows: {
        groups: [
          { name: 'approach', rows: ['up', 'down'] },
          { name: 'climb', rows: ['up', 'down'] },
          { name: 'cruise', rows: ['up', 'down'] },
        ],
      },
    },
  ],
  'autopilot-engagement': [
    { at: ['each axis'], layout: 'list', head: 'axis', rows: { names: ['roll', 'pitch'] } },
    {
      at: ['each means', 'each'],
      layout: 'list',
      head: 'let go by',
      rows: { names: ['button', 'panel', 'breaker'] },
    },
  ],
  'autopilot-modes': [{ at: ['each'], layout: 'repeats', head: 'run', rows: { count: 4 }, when: AUTOPILOT }],
  'autopilot-malfunction': [
    {
      at: ['each'],
      layout: 'list',
      head: 'case',
      rows: { names: ['roll 1 s', 'roll 2 s', 'roll 3 s', 'pitch up 1 s', 'pitch down 1 s', 'approach 1 s'] },
    },
  ],
  'com-range-flight': [
    { at: ['each heading', 'each'], layout: 'headings', head: 'about', unit: '°', rows: { headings: { every: 45 } } },
    { at: ['each transmitter'], layout: 'list', head: 'transmitter', rows: { own: 'radio' } },
  ],
  'nav-accuracy-flight': [
    { at: ['each heading'], layout: 'headings', head: 'about', unit: '°', rows: { headings: { every: 90 } } },
    { at: ['each'], layout: 'list', head: 'item', rows: { blank: 6 } },
  ],
  'transponder-flight': [{ at: ['each'], layout: 'repeats', head: 'height', rows: { count: 4 } }],
  'alternate-static-flight': [{ at: ['each speed'], layout: 'repeats', head: 'speed', rows: { count: 4 } }],
  'no-airspeed-pattern': [
    {
      at: ['each'],
      layout: 'list',
      head: 'in',
      rows: { names: ['climb', 'cruise', 'glide', 'approach'] },
    },
  ],
  'smoke-system-flight': [
    { at: ['each'], layout: 'list', head: 'burst', unit: 's', rows: { names: ['2', '10', '30'] } },
  ],
  'vibration-noise-flight-survey': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'step',
      rows: {
        groups: [
          { name: 'rpm sweep', rows: 5 },
          { name: 'speed', rows: 4 },
          { name: 'gear', when: RETRACTABLE, rows: ['up', 'down'] },
        ],
      },
    },
  ],
  'oil-coolant-consumption-trend': [{ at: ['each'], layout: 'repeats', head: 'flight', rows: { count: 8 } }],
};
