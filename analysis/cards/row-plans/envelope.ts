/** Reading tables of the first flights and of opening the envelope. */
import { FLAPS } from '../../catalogue/index.ts';
import type { RowPlans, TablePlan } from './row-plan.ts';

const levels = (count: number): TablePlan => ({
  at: ['each step of height'],
  layout: 'levels',
  head: 'altimeter',
  rows: { levels: count },
});

const runs = (count: number, title = ''): TablePlan => ({
  at: ['each'],
  layout: 'repeats',
  head: 'run',
  rows: { count },
  ...(title === '' ? {} : { title }),
});

const STALL_RUNS = 'runs 1, 2: first sign · 3 to 7: full · 8: slower entry · 9: faster';

const legs = (speeds: number, title: string, flaps: string): TablePlan => ({
  at: ['each leg'],
  layout: 'legs',
  head: 'leg',
  rows: { speeds, legs: 4 },
  title,
  holds: { flaps },
});

export const ENVELOPE_PLANS: RowPlans = {
  'first-flight-readiness': [{ at: ['each'], layout: 'list', head: 'gate', rows: { blank: 8 } }],
  'first-flight': [levels(6)],
  'post-flight-inspection': [{ at: ['each'], layout: 'list', head: 'place', rows: { blank: 9 } }],
  'second-flight-repeat': [
    levels(6),
    { at: ['each'], layout: 'list', head: 'in', rows: { names: ['climb', 'level', 'glide'] } },
  ],
  'third-flight-engine': [
    { at: ['per power'], layout: 'matrix', head: 'power', rows: { names: ['55 %', '65 %', '75 %'] } },
  ],
  'tank-switching-flight': [
    { at: ['per source', 'each change'], layout: 'list', head: 'feed', rows: { own: 'source' } },
  ],
  'airspeed-calibration-first': [
    legs(5, 'flaps up', 'up'),
    { ...legs(3, 'landing flap', 'landing'), when: FLAPS },
    { at: ['each speed'], layout: 'list', head: 'speed', rows: { count: 6 } },
  ],
  'airspeed-calibration-full': [
    legs(6, 'clean', 'up'),
    { ...legs(3, 'takeoff flap', 'takeoff'), when: FLAPS },
    { ...legs(3, 'landing flap', 'landing'), when: FLAPS },
    { at: ['each set'], layout: 'list', head: 'set', rows: { count: 4 } },
  ],
  'static-altimeter-check': [
    { at: ['each speed'], layout: 'repeats', head: 'speed', rows: { count: 3 } },
    { at: ['each side'], layout: 'list', head: 'slip', rows: { names: ['left', 'right'] } },
  ],
  'pitch-stability-first-look': [
    {
      at: ['each speed', 'each'],
      layout: 'matrix',
      head: 'speed',
      rows: { names: ['trim', '10 % slower', '20 % slower', '10 % faster', '20 % faster'] },
    },
  ],
  'slow-flight': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'flaps up', rows: 3 },
          { name: 'landing flap', when: FLAPS, rows: 3 },
        ],
      },
    },
  ],
  'stall-clean': [runs(9, STALL_RUNS)],
  'stall-clean-gear-up': [runs(7, 'runs 1, 2: first sign · 3 to 7: full')],
  'stall-landing': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: { count: 5 },
      title: 'runs 1, 2: first sign · 3 to 5: full. One sheet each flap setting: ______',
    },
  ],
  'stall-power-on': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: '50 %', rows: 3 },
          { name: '75 %', rows: 3 },
        ],
      },
      title: 'runs 1, 2: first sign · 3: full',
    },
  ],
  'stall-turning': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'turn',
      rows: {
        groups: [
          { name: 'idle', rows: ['left', 'right', 'left', 'right'] },
          { name: 'power', rows: ['left', 'right', 'left', 'right'] },
        ],
      },
      title: 'first pair: first sign · second pair: full',
    },
  ],
  'stall-accelerated': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'turn',
      rows: {
        groups: [
          { name: 'buffet', rows: ['left', 'right'] },
          { name: 'break', rows: ['left', 'right'] },
        ],
      },
    },
  ],
  'gear-first-retraction': [{ at: ['each', 'per leg each'], layout: 'cycles', head: 'cycle', rows: { count: 4 } }],
  'gear-emergency-extension-flight': [{ at: ['per leg', 'each'], layout: 'cycles', head: 'run', rows: { count: 3 } }],
  'flap-speed-limits': [runs(8)],
  'gear-speed-limits': [runs(8)],
  'cooling-climb-first': [
    { ...levels(12), title: 'first climb, faster' },
    { ...levels(12), title: 'second climb' },
    { at: ['start and peak', 'each climb'], layout: 'list', head: 'climb', rows: { count: 2 } },
  ],
  'propeller-speed-control-flight': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'run',
      rows: {
        groups: [
          { name: 'slow', rows: 3 },
          { name: 'middle', rows: 3 },
          { name: 'fast', rows: 3 },
        ],
      },
    },
    { at: ['each speed'], layout: 'list', head: 'glide', rows: { count: 4 } },
  ],
  'heat-vent-co-flight': [
    {
      at: ['each'],
      layout: 'list',
      head: 'in',
      rows: {
        names: [
          'climb',
          'cruise',
          'idle descent',
          'slip left',
          'slip right',
          { when: FLAPS, name: 'flap down' },
          'heat full',
          'vents closed',
          'vents open',
        ],
      },
    },
  ],
  'canopy-flight-check': [{ at: ['each latch', 'each'], layout: 'list', head: 'speed step', rows: { count: 5 } }],
  'ten-hour-inspection': [
    { at: ['each'], layout: 'list', head: 'place', rows: { blank: 8 } },
    { at: ['each surface'], layout: 'list', head: 'surface', rows: { own: 'surface' } },
  ],
  'load-factor-buildup': [
    {
      at: ['each', 'each step'],
      layout: 'matrix',
      head: 'aim',
      unit: 'g',
      rows: { names: ['2.0 left', '2.0 right', '2.5', '3.0', '3.5'] },
    },
  ],
  'low-g-push': [{ at: ['each'], layout: 'repeats', head: 'push', rows: { count: 3 } }],
  'speed-expansion': [{ at: ['each', 'each axis'], layout: 'matrix', head: 'step', rows: { count: 3 } }],
  'weight-expansion': [
    {
      at: ['each', 'climb'],
      layout: 'matrix',
      head: 'payload',
      unit: '%',
      rows: { names: ['20', '40', '60', '80', '100'] },
    },
  ],
};
