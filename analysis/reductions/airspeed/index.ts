import type { Reduction } from '../reduction.ts';
import { airspeedConditions, airspeedOptions, airspeedPoints } from './input.ts';
import { airspeedNote } from './note.ts';
import { predictAirspeed } from './predict.ts';
import { reduceAirspeed } from './reduce.ts';

export const airspeed: Reduction = {
  kind: 'airspeed',
  title: 'Airspeed calibration',
  answers: 'How far is the airspeed indicator off at each speed, and what was the wind?',
  serves: [
    'airspeed-calibration-first',
    'static-altimeter-check',
    'airspeed-calibration-full',
    'alternate-static-flight',
  ],
  needs: ['indicated-airspeed', 'pressure-altitude', 'outside-air-temperature', 'ground-speed', 'track-true'],
  uses: [
    'roll-angle',
    'heading-magnetic',
    'yaw-rate',
    'latitude',
    'longitude',
    'indicated-altitude',
    'flap-position',
    'fuel-flow',
    'fuel-used',
  ],
  roles: [
    { role: 'leg', meaning: 'straight and level at one airspeed' },
    { role: 'turn', meaning: 'level turn at constant bank and airspeed, twice round or more' },
    { role: 'dropped', meaning: 'left out by hand, with the reason' },
  ],
  pointsSchema: airspeedPoints,
  optionsSchema: airspeedOptions,
  conditionsSchema: airspeedConditions,
  reduce: reduceAirspeed,
  predict: predictAirspeed,
  note: airspeedNote,
};
