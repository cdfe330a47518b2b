/** Reading tables of the tests done in the shop: fuel, gear, cooling, engine, weight. */
import { CONSTANT_SPEED, HYDRAULICS, LIQUID, MIXTURE } from '../../catalogue/index.ts';
import type { RowPlans } from './row-plan.ts';

export const SHOP_SYSTEM_PLANS: RowPlans = {
  'fuel-quantity-calibration': [
    {
      at: ['each step'],
      layout: 'pours',
      head: 'in all',
      rows: { pours: true },
      eachTank: true,
    },
  ],
  'fuel-flow-delivery': [
    {
      at: ['3 per case', 'per case'],
      layout: 'repeats',
      head: 'run',
      rows: {
        groups: [
          { name: 'main feed', rows: 3 },
          { name: 'boost alone', rows: 3 },
          { name: 'standby alone', rows: 3 },
        ],
      },
    },
  ],
  'unusable-fuel-ground': [
    {
      at: ['per attitude', 'per case'],
      layout: 'list',
      head: 'attitude',
      rows: { names: ['level', 'nose up', 'nose down', 'left wing low', 'right wing low'] },
      eachTank: true,
    },
  ],
  'fuel-transfer-ground': [
    { at: ['1 Hz'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 1, to: 10 } } },
    {
      at: ['per case', 'full case'],
      layout: 'list',
      head: 'case',
      rows: { names: ['normal', 'main full', 'pump failed', 'valve failed', 'low volts'] },
    },
  ],
  'radiator-door-fan-ground': [
    { at: ['each command'], layout: 'list', head: 'door', unit: '%', rows: { names: ['0', '25', '50', '75', '100'] } },
    { at: ['each way'], layout: 'list', head: 'way', rows: { names: ['opening', 'closing'] } },
    { at: ['per run'], layout: 'repeats', head: 'fan run', rows: { count: 3 } },
    { at: ['5 points'], layout: 'list', head: 'core point', rows: { count: 5 } },
  ],
  'hydraulic-leak-proof': [
    { at: ['each'], layout: 'list', head: 'setting', rows: { names: ['cut-in', 'cut-out', 'relief'] } },
  ],
  'gear-rigging-locks': [{ at: ['per wheel', 'per leg'], layout: 'list', head: 'leg', rows: { own: 'wheel' } }],
  'brake-ground-check': [{ at: ['per wheel'], layout: 'list', head: 'wheel', rows: { own: 'wheel' } }],
  'gear-swing-normal': [
    {
      at: ['per leg each swing', 'each swing'],
      layout: 'cycles',
      head: 'swing',
      title: 'S slow · L low volts · H high volts · R reversal',
      rows: {
        names: [
          ...['S1', 'S2', 'S3'],
          ...['1', '2', '3', '4', '5', '6', '7', '8', '9', '10'],
          ...['L1', 'L2', 'L3', 'H1', 'H2', 'H3', 'R1', 'R2', 'R3', 'R4'],
        ],
      },
    },
  ],
  'gear-swing-emergency': [
    {
      at: ['per leg'],
      layout: 'cycles',
      head: 'run',
      rows: {
        groups: [
          { name: 'pump out', rows: 3 },
          { name: 'power off', rows: 2 },
          { name: 'mid travel', rows: 1 },
          { name: 'low fluid', rows: 1 },
        ],
      },
    },
  ],
  'gear-indication-squat-faults': [
    { at: ['each switch and relay', 'per fault'], layout: 'list', head: 'switch or relay', rows: { blank: 12 } },
  ],
  'canopy-harness-egress': [
    { at: ['each'], layout: 'list', head: 'latch', rows: { count: 4 } },
    {
      at: ['each way'],
      layout: 'list',
      head: 'way out',
      rows: { names: ['normal', 'jammed', 'left blocked', 'right blocked', 'blindfold'] },
    },
  ],
  'propeller-track-stops': [
    { at: ['per blade'], layout: 'list', head: 'blade', rows: { own: 'blade' } },
    { at: ['each'], layout: 'list', head: 'bolt', rows: { count: 8 } },
  ],
  'engine-controls-rigging': [
    {
      at: ['each lever', 'each control'],
      layout: 'list',
      head: 'lever',
      rows: {
        names: [
          'throttle',
          { when: CONSTANT_SPEED, name: 'propeller' },
          { when: MIXTURE, name: 'mixture' },
          'alternate air',
        ],
      },
    },
  ],
  'weigh-empty-cg': [
    {
      at: ['per wheel per run'],
      layout: 'repeats',
      head: 'wheel',
      rows: { own: 'wheel' },
      title: 'three runs, scales swapped for the third',
    },
    { at: ['twice per wheel'], layout: 'repeats', head: 'wheel', rows: { own: 'wheel' }, title: 'two people' },
    {
      at: ['each fluid'],
      layout: 'list',
      head: 'fluid',
      rows: { names: ['fuel', 'oil', { when: LIQUID, name: 'coolant' }, { when: HYDRAULICS, name: 'hydraulic' }] },
    },
  ],
  'loading-envelope-plan': [{ at: ['per block'], layout: 'list', head: 'block', rows: { blank: 7 } }],
  'electric-trim-ground': [
    { at: ['each end', 'each way'], layout: 'list', head: 'trim', rows: { names: ['nose up', 'nose down'] } },
    { at: ['per means'], layout: 'list', head: 'means', rows: { names: ['disconnect', 'breaker', 'master'] } },
  ],
  'engine-control-unit-bench': [{ at: ['each', 'per sensor'], layout: 'list', head: 'sensor', rows: { blank: 8 } }],
  'smoke-system-ground': [{ at: ['per run'], layout: 'list', head: 'volts', rows: { names: ['normal', 'low'] } }],
};
