import type { Reduction } from '../reduction.ts';
import { flightConditions, flightOptions, flightPoints } from './input.ts';
import { coolingFlightNote } from './note.ts';
import { predictCoolingFlight } from './predict.ts';
import { reduceCoolingFlight } from './reduce.ts';

export const coolingFlight: Reduction = {
  kind: 'cooling-flight',
  title: 'Cooling in steady flight',
  answers: 'How warm does it run at a power, speed and door, and what is left on a hot day?',
  serves: ['cooling-cruise-door-map', 'cooling-door-failure-flight', 'idle-descent-cooling'],
  needs: ['outside-air-temperature'],
  uses: [
    'coolant-temperature',
    'fuel-flow',
    'cylinder-head-temperature',
    'oil-temperature',
    'indicated-airspeed',
    'calibrated-airspeed',
    'pressure-altitude',
    'cowl-exit-position',
    'manifold-pressure',
    'engine-speed',
  ],
  usesCalibration: true,
  roles: [
    { role: 'steady', meaning: 'power, airspeed, height and door held until the temperature stood still' },
    { role: 'dropped', meaning: 'left out by hand, with the reason' },
  ],
  pointsSchema: flightPoints,
  optionsSchema: flightOptions,
  conditionsSchema: flightConditions,
  reduce: reduceCoolingFlight,
  predict: predictCoolingFlight,
  note: coolingFlightNote,
};
