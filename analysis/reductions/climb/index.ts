import type { Reduction } from '../reduction.ts';
import { climbConditions, climbOptions, climbPoints } from './input.ts';
import { climbNote } from './note.ts';
import { predictClimb } from './predict.ts';
import { reduceClimb } from './reduce.ts';

export const climb: Reduction = {
  kind: 'climb',
  title: 'Climb',
  answers: 'How fast does the airplane climb, at which speed best, and how does that fall with height?',
  serves: ['climb-sawtooth', 'check-climb'],
  needs: ['indicated-airspeed', 'pressure-altitude', 'outside-air-temperature'],
  uses: [
    'calibrated-airspeed',
    'reported-altitude',
    'indicated-altitude',
    'heading-magnetic',
    'track-true',
    'roll-angle',
    'engine-speed',
    'manifold-pressure',
    'fuel-flow',
    'fuel-used',
  ],
  usesCalibration: true,
  roles: [
    { role: 'climb', meaning: 'climb at one airspeed and power, wings level' },
    { role: 'dropped', meaning: 'left out by hand, with the reason' },
  ],
  pointsSchema: climbPoints,
  optionsSchema: climbOptions,
  conditionsSchema: climbConditions,
  reduce: reduceClimb,
  predict: predictClimb,
  note: climbNote,
};
