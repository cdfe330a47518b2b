/** Reading tables of the tests done in the shop and at the desk. */
import { CONSTANT_SPEED, FLAPS, HYDRAULICS, LIQUID, MIXTURE } from '../../catalogue/index.ts';
import type { RowPlans } from './row-plan.ts';

export const SHOP_PLANS: RowPlans = {
  'open-inspection': [
    { at: ['per zone', 'when found'], layout: 'list', head: 'zone', rows: { blank: 9 } },
    { at: ['per item'], layout: 'list', head: 'hose or seal', rows: { blank: 5 } },
  ],
  'closing-inspection': [{ at: ['per zone', 'when found'], layout: 'list', head: 'zone', rows: { blank: 10 } }],
  'documents-and-placards': [{ at: ['per placard'], layout: 'list', head: 'placard', rows: { blank: 7 } }],
  'pilot-and-emergency-plan': [
    { at: ['per endorsement'], layout: 'list', head: 'endorsement', rows: { blank: 3 } },
    {
      at: ['per drill'],
      layout: 'list',
      head: 'drill',
      rows: {
        names: ['engine, on the roll', 'engine, low', 'engine, high', 'fire', 'getting out', 'controls', 'electrics'],
      },
    },
  ],
  'control-throws-freedom': [
    {
      at: ['per surface and direction'],
      layout: 'list',
      head: 'surface',
      rows: {
        names: [
          'elevator up',
          'elevator down',
          'left aileron up',
          'left aileron down',
          'right aileron up',
          'right aileron down',
          'rudder left',
          'rudder right',
        ],
      },
    },
    { at: ['per axis'], layout: 'list', head: 'axis', rows: { names: ['pitch', 'roll', 'yaw'] } },
    { at: ['per setting'], layout: 'list', head: 'flap', rows: { own: 'flap' }, when: FLAPS },
  ],
  'control-system-proof': [
    {
      at: ['each step', 'after release'],
      layout: 'list',
      head: 'step',
      rows: {
        groups: [
          { name: 'pitch', rows: 4 },
          { name: 'roll', rows: 4 },
          { name: 'yaw', rows: 4 },
        ],
      },
    },
  ],
  'surface-balance-freeplay': [
    { at: ['per surface', 'per surface and tab'], layout: 'list', head: 'surface', rows: { own: 'surface' } },
    { at: ['per cable'], layout: 'list', head: 'cable', rows: { blank: 6 } },
  ],
  'first-power-up': [{ at: ['per circuit'], layout: 'list', head: 'circuit', rows: { blank: 12 } }],
  'ground-supply-plug': [
    {
      at: ['each state'],
      layout: 'list',
      head: 'state',
      rows: { names: ['at the supply', 'plugged, batteries off', 'batteries on'] },
    },
    { at: ['each battery'], layout: 'list', head: 'battery', rows: { own: 'battery' } },
  ],
  'electrical-load-survey': [
    { at: ['each load'], layout: 'list', head: 'consumer', rows: { blank: 14 } },
    {
      at: ['computed'],
      layout: 'list',
      head: 'phase',
      rows: { names: ['start', 'taxi', 'takeoff', 'day cruise', 'night cruise', 'landing', 'generator out'] },
    },
    { at: ['each event'], layout: 'repeats', head: 'start', rows: { count: 3 } },
  ],
  'battery-endurance-ground': [
    { at: ['1 Hz'], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 5, to: 60 } } },
    { at: ['per event'], layout: 'list', head: 'device', rows: { blank: 4 } },
  ],
  'battery-failover-ground': [
    { at: ['per failure'], layout: 'list', head: 'failure', rows: { blank: 8 } },
    { at: ['per run'], layout: 'repeats', head: 'run', rows: { count: 2 } },
  ],
  'engine-instrument-calibration': [
    { at: ['3 points per channel'], layout: 'list', head: 'channel', rows: { blank: 12 } },
    { at: ['per channel'], layout: 'list', head: 'channel', rows: { blank: 8 } },
  ],
  'recorder-channel-check': [{ at: ['per file'], layout: 'list', head: 'recorder', rows: { own: 'recorder' } }],
  'airspeed-indicator-scale': [
    {
      at: ['each point', 'each point, up and down'],
      layout: 'levels',
      head: 'about',
      rows: { airspeeds: { from: 40, every: 20 } },
    },
  ],
  'altimeter-transponder-certification': [
    { at: ['per test point'], layout: 'list', head: 'test point', rows: { blank: 8 } },
    { at: ['per antenna'], layout: 'list', head: 'antenna', rows: { blank: 2 } },
  ],
  'avionics-antenna-ground': [
    { at: ['3 frequencies per antenna'], layout: 'list', head: 'antenna, MHz', rows: { blank: 6 } },
    { at: ['per signal'], layout: 'list', head: 'signal', rows: { blank: 3 } },
    { at: ['per transmitter'], layout: 'list', head: 'transmitter', rows: { own: 'radio' } },
  ],
  'autopilot-servo-ground': [
    {
      at: ['per axis and direction'],
      layout: 'list',
      head: 'servo',
      rows: { names: ['roll left', 'roll right', 'pitch up', 'pitch down'] },
    },
    {
      at: ['per means'],
      layout: 'list',
      head: 'means',
      rows: { names: ['grip button', 'panel', 'breaker', 'master'] },
    },
  ],
  'fuel-tank-leak-vent': [
    { at: ['10 min per tank', 'per flush', 'after 24 h'], layout: 'list', head: 'tank', rows: { own: 'tank' } },
  ],
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
