/** Cooling in the climb, as the registry and the pages know it. */
import type { Reduction } from '../reduction.ts';
import { coolingClimbConditions, coolingClimbOptions, coolingClimbPoints } from './input.ts';
import { coolingClimbNote } from './note.ts';
import { predictCoolingClimb } from './predict.ts';
import { reduceCoolingClimb } from './reduce.ts';

export const coolingClimb: Reduction = {
  kind: 'cooling-climb',
  title: 'Cooling in the climb',
  answers: 'Where do the temperatures peak in a full-power climb, and what is left to their limits on a hot day?',
  serves: ['cooling-climb-first', 'cooling-climb-heavy'],
  needs: ['outside-air-temperature', 'pressure-altitude'],
  uses: [
    'coolant-temperature',
    'oil-temperature',
    'cylinder-head-temperature',
    'inlet-air-temperature',
    'indicated-airspeed',
    'engine-speed',
    'manifold-pressure',
    'fuel-flow',
    'cowl-exit-position',
    'cooling-fan-state',
    'gear-position',
    'flap-position',
  ],
  roles: [
    { role: 'climb', meaning: 'one climb at climb power' },
    { role: 'dropped', meaning: 'left out by hand, with the reason' },
  ],
  pointsSchema: coolingClimbPoints,
  optionsSchema: coolingClimbOptions,
  conditionsSchema: coolingClimbConditions,
  reduce: reduceCoolingClimb,
  predict: predictCoolingClimb,
  note: coolingClimbNote,
};
