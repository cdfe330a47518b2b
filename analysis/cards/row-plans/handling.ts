/** Reading tables of the handling and sign-off tests. */
import { FLAPS, RETRACTABLE } from '../../catalogue/index.ts';
import type { RowPlans } from './row-plan.ts';

const both = ['left', 'right'] as const;

export const HANDLING_PLANS: RowPlans = {
  'static-longitudinal': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'speed',
      rows: {
        groups: [
          { name: 'climb', rows: ['−30', '−20', '−10', 'trim', '+10', '+20', '+30'] },
          { name: 'cruise', rows: ['−30', '−20', '−10', 'trim', '+10', '+20', '+30'] },
          { name: 'landing', rows: ['−20', '−10', 'trim', '+10', '+20'] },
        ],
      },
    },
  ],
  'lateral-directional-static': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'pedal',
      rows: {
        groups: [
          { name: 'slow', rows: ['half left', 'half right', 'full left', 'full right'] },
          { name: 'approach', rows: ['half left', 'half right', 'full left', 'full right'] },
          { name: 'cruise', rows: ['half left', 'half right'] },
        ],
      },
    },
  ],
  'pitch-dynamics': [
    {
      at: ['each'],
      layout: 'list',
      head: 'stick',
      rows: {
        groups: [
          { name: 'approach', rows: ['held', 'released', 'slow mode'] },
          { name: 'cruise', rows: ['held', 'released', 'slow mode'] },
        ],
      },
    },
  ],
  'dutch-roll-spiral': [
    {
      at: ['each', 'each way'],
      layout: 'list',
      head: 'case',
      rows: {
        groups: [
          { name: 'approach', rows: ['free', 'held', 'spiral left', 'spiral right'] },
          { name: 'cruise', rows: ['free', 'held', 'spiral left', 'spiral right'] },
        ],
      },
    },
  ],
  'roll-rate': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'way',
      rows: {
        groups: [
          { name: 'approach', rows: both },
          { name: 'takeoff', rows: both },
          { name: 'cruise', rows: both },
        ],
      },
    },
  ],
  'stick-force-per-g': [
    {
      at: ['each'],
      layout: 'matrix',
      head: 'aim',
      unit: 'g',
      rows: {
        groups: [
          { name: 'slower', rows: ['1.5', '2.0', '2.5', '3.0'] },
          { name: 'cruise', rows: ['1.5', '2.0', '2.5', '3.0'] },
        ],
      },
    },
  ],
  'trim-authority': [
    { at: ['each'], layout: 'list', head: 'trimmed in', rows: { names: ['climb', 'cruise', 'approach'] } },
    {
      at: ['each change'],
      layout: 'list',
      head: 'change',
      rows: {
        names: [
          'go-around power',
          { when: FLAPS, name: 'flap half' },
          { when: FLAPS, name: 'flap full' },
          { when: RETRACTABLE, name: 'gear down' },
          { when: RETRACTABLE, name: 'gear up' },
        ],
      },
    },
  ],
  'crosswind-buildup': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'side',
      rows: {
        groups: [
          { name: 'step 1', rows: both },
          { name: 'step 2', rows: both },
          { name: 'step 3', rows: both },
          { name: 'step 4', rows: both },
        ],
      },
    },
  ],
  'lateral-imbalance': [{ at: ['each'], layout: 'repeats', head: 'step', rows: { count: 3 } }],
  'aft-cg-expansion': [{ at: ['each'], layout: 'repeats', head: 'step', rows: { count: 1 } }],
  'forward-cg-landing': [
    { at: ['each'], layout: 'list', head: 'in', rows: { names: ['flare, height', 'landing', 'takeoff'] } },
  ],
  'corner-stalls': [
    {
      at: ['each'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'clean', rows: 3 },
          { name: 'takeoff', when: FLAPS, rows: 3 },
          { name: 'landing', rows: 3 },
        ],
      },
      title: 'one sheet each corner: ______',
    },
  ],
  'spin-recovery': [
    {
      at: ['each', 'start, end'],
      layout: 'repeats',
      head: 'way',
      rows: {
        groups: [
          { name: 'half turn', rows: both },
          { name: 'one turn', rows: both },
        ],
      },
    },
  ],
  'aerobatic-buildup': [{ at: ['each', 'lowest'], layout: 'repeats', head: 'no.', rows: { count: 6 } }],
  'phase-end-inspection': [{ at: ['each'], layout: 'list', head: 'place', rows: { blank: 9 } }],
  'handbook-data': [{ at: ['each'], layout: 'list', head: 'handbook line', rows: { blank: 9 } }],
  'airspeed-markings-placards': [
    {
      at: ['each'],
      layout: 'list',
      head: 'mark',
      rows: {
        names: [
          'Vso',
          'Vs1',
          { when: FLAPS, name: 'VFE' },
          'VNO',
          'VNE',
          'VA',
          { when: RETRACTABLE, name: 'VLO' },
          { when: RETRACTABLE, name: 'VLE' },
        ],
      },
    },
  ],
  'task-list-review': [{ at: ['each'], layout: 'list', head: 'task', rows: { blank: 8 } }],
  'night-ifr-equipment-check': [
    { at: ['each'], layout: 'list', head: 'item', rows: { blank: 8 } },
    { at: ['each approach'], layout: 'repeats', head: 'approach', rows: { count: 3 } },
  ],
  'recheck-after-change': [{ at: ['each'], layout: 'list', head: 'change', rows: { blank: 6 } }],
  'recurring-checks': [{ at: ['each'], layout: 'list', head: 'check', rows: { blank: 8 } }],
};
