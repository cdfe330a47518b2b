/** Reading tables of the tests with the engine running on the ground, and of the taxi tests. */
import { EXIT_DOOR, FAN_ONLY, GROUND_FAN, TWO_BATTERIES } from '../../catalogue/index.ts';
import type { RowPlans } from './row-plan.ts';

const DOORS = ['100', '75', '50', '25', '0'] as const;

export const GROUND_PLANS: RowPlans = {
  'first-start': [{ at: ['each start', '1 min', 'shut-down'], layout: 'repeats', head: 'start', rows: { count: 2 } }],
  'break-in-ground-runs': [
    { at: ['1 Hz', 'per step'], layout: 'repeats', head: 'step', rows: { count: 10 }, title: 'highest of each step' },
  ],
  'ignition-static-power-check': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'side',
      rows: {
        groups: [
          { name: 'cold', rows: ['1', '2'] },
          { name: 'hot', rows: ['1', '2'] },
        ],
      },
    },
  ],
  'fuel-pump-shutoff-running': [
    { at: ['per pump'], layout: 'list', head: 'pump', rows: { names: ['1', '2', 'both'] } },
    { at: ['each change'], layout: 'repeats', head: 'change', rows: { count: 4 } },
  ],
  'tank-switching-running': [{ at: ['each', 'each position'], layout: 'list', head: 'feed', rows: { own: 'source' } }],
  'coolant-warm-up-thermostat': [
    { at: ['each min'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 1, to: 20 } } },
  ],
  'ground-cooling-door-map': [
    {
      at: ['1 Hz', 'each point'],
      without: ['cowl-exit-position', 'cooling-fan-state'],
      layout: 'matrix',
      head: 'door',
      unit: '%',
      when: EXIT_DOOR,
      rows: {
        groups: [
          { name: 'idle, fan off', rows: DOORS },
          { name: 'idle, fan on', when: GROUND_FAN, rows: DOORS },
          { name: 'check rpm', rows: DOORS },
          { name: 'tail wind', rows: ['100'] },
        ],
      },
      title: 'steady, or highest, at the end of each point',
    },
    {
      at: ['1 Hz', 'each point'],
      without: ['cowl-exit-position', 'cooling-fan-state'],
      layout: 'matrix',
      head: 'point',
      when: FAN_ONLY,
      rows: { names: ['idle, fan off', 'idle, fan on', 'check rpm 1 min', 'tail to wind'] },
      title: 'steady, or highest, at the end of each point',
    },
    {
      at: ['1 Hz', 'each point'],
      without: ['cowl-exit-position', 'cooling-fan-state'],
      layout: 'matrix',
      head: 'point',
      when: { all: [{ not: EXIT_DOOR }, { not: GROUND_FAN }] },
      rows: { names: ['idle', 'check rpm 1 min', 'idle, tail to wind', 'check rpm, tail'] },
      title: 'steady, or highest, at the end of each point',
    },
  ],
  'ground-cooling-fan-hold': [
    {
      at: ['1 Hz'],
      layout: 'minutes',
      head: 'hold',
      unit: 'min',
      rows: { minutes: { every: 3, to: 30 } },
      title: 'fan on',
      holds: { 'cooling-fan-state': 'on' },
    },
    {
      at: ['1 Hz'],
      layout: 'minutes',
      head: 'fan off',
      unit: 'min',
      rows: { minutes: { every: 1, to: 5 } },
      title: 'after 10 min idle: fan off',
      holds: { 'cooling-fan-state': 'off' },
    },
  ],
  'heat-soak': [
    {
      at: ['once per run', 'end'],
      layout: 'repeats',
      head: 'run',
      rows: { names: ['plain stop', { when: GROUND_FAN, name: 'fan run-on' }] },
    },
  ],
  'hot-restart': [
    { at: ['each', 'each, 1 min'], layout: 'repeats', head: 'wait', unit: 'min', rows: { names: ['5', '15', '30'] } },
  ],
  'engine-control-failover-running': [
    {
      at: ['per fault'],
      layout: 'list',
      head: 'fault',
      rows: {
        names: [
          'lane A',
          'lane B',
          'generator off',
          { when: TWO_BATTERIES, name: 'battery 1 off' },
          { when: TWO_BATTERIES, name: 'battery 2 off' },
          'sensor',
          'sensor',
          'sensor',
        ],
      },
    },
  ],
  'propeller-governor-ground': [{ at: ['3 points', '3'], layout: 'repeats', head: 'point', rows: { count: 3 } }],
  'charging-emi-running': [
    {
      at: ['per rpm and load'],
      layout: 'matrix',
      head: 'load',
      rows: {
        groups: [
          { name: 'idle', rows: ['taxi', 'full'] },
          { name: 'taxi', rows: ['taxi', 'full'] },
          { name: 'check', rows: ['taxi', 'full'] },
        ],
      },
    },
    { at: ['each'], layout: 'list', head: 'no.', rows: { count: 3 } },
  ],
  'compass-swing': [
    { at: ['per 30 deg'], layout: 'headings', head: 'about', unit: '°', rows: { headings: { every: 30 } } },
    { at: ['per load'], layout: 'list', head: 'load on', rows: { blank: 5 } },
  ],
  'vibration-balance-ground': [
    { at: ['per rpm'], layout: 'levels', head: 'rpm', rows: { blank: 8 } },
    { at: ['per run'], layout: 'repeats', head: 'run', rows: { count: 4 } },
  ],
  'cabin-co-ground': [
    {
      at: ['per case'],
      layout: 'list',
      head: 'case',
      rows: {
        groups: [
          { name: 'into wind', rows: ['face', 'foot'] },
          { name: 'tail to wind', rows: ['face', 'foot'] },
          { name: 'check rpm', rows: ['face', 'foot'] },
          { name: 'full power', rows: ['face', 'foot'] },
        ],
      },
    },
  ],
  'cabin-heat-demist-ground': [
    { at: ['each case'], layout: 'list', head: 'heat', rows: { names: ['off', 'half', 'full'] } },
  ],
  'ground-run-inspection': [{ at: ['each'], layout: 'list', head: 'place', rows: { blank: 8 } }],
  'taxi-slow': [
    { at: ['each 3 min'], layout: 'minutes', head: 'taxi', unit: 'min', rows: { minutes: { every: 3, to: 15 } } },
    { at: ['each side'], layout: 'list', head: 'turn', rows: { names: ['left', 'right'] } },
    { at: ['after'], layout: 'list', head: 'wheel', rows: { own: 'wheel' } },
  ],
  'taxi-cooling-hold': [
    {
      at: ['each event', 'each'],
      layout: 'list',
      head: 'after',
      rows: { names: ['start', 'taxi 10 min', 'hold 10 min', 'run-up', 'backtrack'] },
    },
  ],
  'taxi-fast': [{ at: ['each run', 'each'], layout: 'repeats', head: 'run', rows: { count: 6 } }],
  'aborted-takeoff': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'near 50 %', rows: ['1', '2'] },
          { name: '60 to 70 %', rows: ['1', '2'] },
        ],
      },
    },
  ],
};
