/** Reading tables of the tests done at the desk and in the shop: papers, controls, electrics, instruments. */
import { FLAPS } from '../../catalogue/index.ts';
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
};
