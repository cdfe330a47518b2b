/** Reading tables of climb, glide, cruise, takeoff and landing. */
import { CONSTANT_SPEED, FLAPS, RETRACTABLE } from '../../catalogue/index.ts';
import type { RowPlans } from './row-plan.ts';

/** a climb and its reciprocal beside each other; what does not change between them is read once */
const BOTH_WAYS = { at: ['each', 'each speed'], perGroup: ['each speed'], layout: 'legs', head: 'way' } as const;

export const MEASURED_FLIGHT_PLANS: RowPlans = {
  'climb-sawtooth': [
    {
      at: ['bottom, top', 'each altitude'],
      layout: 'list',
      head: 'altitude',
      rows: { names: ['first', 'second', { when: FLAPS, name: 'takeoff flap' }] },
    },
    { ...BOTH_WAYS, rows: { speeds: 7, legs: 2 }, title: 'first altitude', holds: { flaps: 'up' } },
    { ...BOTH_WAYS, rows: { speeds: 3, legs: 2 }, title: 'second altitude', holds: { flaps: 'up' } },
    { ...BOTH_WAYS, rows: { speeds: 3, legs: 2 }, title: 'takeoff flap', when: FLAPS, holds: { flaps: 'takeoff' } },
  ],
  'check-climb': [
    { at: ['each step of height', 'each'], layout: 'levels', head: 'altimeter', rows: { levels: 8, by: 2 } },
  ],
  glide: [
    { at: ['each'], layout: 'legs', head: 'way', rows: { speeds: 6, legs: 2 } },
    {
      at: ['each'],
      layout: 'list',
      head: 'at best speed',
      rows: {
        names: [
          { when: CONSTANT_SPEED, name: 'fine pitch' },
          { when: RETRACTABLE, name: 'gear down' },
          { when: FLAPS, name: 'flap' },
        ],
      },
      when: { any: [CONSTANT_SPEED, RETRACTABLE, FLAPS] },
    },
  ],
  'power-loss-height-loss': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'ahead', rows: 3 },
          { name: 'turn left', rows: 3 },
          { name: 'turn right', rows: 3 },
          { name: 'gear down', when: RETRACTABLE, rows: 1 },
        ],
      },
    },
  ],
  'level-speed-power': [
    {
      at: ['each', 'each leg'],
      layout: 'matrix',
      head: 'power',
      unit: '%',
      rows: {
        groups: [
          { name: 'altitude 1', rows: ['45', '55', '65', '75', 'full'] },
          { name: 'altitude 2', rows: ['45', '55', '65', '75', 'full'] },
          { name: 'altitude 3', rows: ['45', '55', '65', '75', 'full'] },
        ],
      },
    },
  ],
  'range-endurance-fuel': [
    { at: ['each 10 min'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 10, to: 60 } } },
    { at: ['each leg'], layout: 'repeats', head: 'leg', rows: { count: 4 } },
  ],
  'autopilot-coupled-approach': [{ at: ['each'], layout: 'repeats', head: 'approach', rows: { count: 3 } }],
  'takeoff-distance': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'light', rows: 3 },
          { name: 'gross', rows: 3 },
        ],
      },
    },
  ],
  'landing-distance': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'light', rows: 3 },
          { name: 'gross', rows: 3 },
        ],
      },
    },
  ],
  'balked-landing-climb': [
    {
      at: ['each'],
      layout: 'list',
      head: 'with',
      rows: {
        names: [
          'all down',
          { when: FLAPS, name: 'flap half' },
          { when: FLAPS, name: 'flap up' },
          { when: RETRACTABLE, name: 'gear up' },
        ],
      },
    },
  ],
};
