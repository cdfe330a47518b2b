import type { Reduction } from '../reduction.ts';
import { coolingConditions, coolingOptions, coolingPoints } from './input.ts';
import { coolingNote } from './note.ts';
import { predictCoolingGround } from './predict.ts';
import { reduceCoolingGround } from './reduce.ts';

export const coolingGround: Reduction = {
  kind: 'cooling-ground',
  title: 'Cooling on the ground',
  answers: 'Where do the temperatures settle, how soon is a limit reached, and what is left on a hot day?',
  serves: [
    'coolant-warm-up-thermostat',
    'ground-cooling-door-map',
    'ground-cooling-fan-hold',
    'heat-soak',
    'taxi-cooling-hold',
  ],
  needs: ['coolant-temperature', 'engine-speed'],
  uses: [
    'cylinder-head-temperature',
    'oil-temperature',
    'outside-air-temperature',
    'inlet-air-temperature',
    'cowl-exit-position',
    'cooling-fan-state',
    'manifold-pressure',
    'pressure-altitude',
    'propeller-speed',
  ],
  roles: [
    { role: 'hold', meaning: 'power, door and fan held still' },
    { role: 'soak', meaning: 'engine stopped' },
    { role: 'dropped', meaning: 'left out by hand, with the reason' },
  ],
  pointsSchema: coolingPoints,
  optionsSchema: coolingOptions,
  conditionsSchema: coolingConditions,
  reduce: reduceCoolingGround,
  predict: predictCoolingGround,
  note: coolingNote,
};
