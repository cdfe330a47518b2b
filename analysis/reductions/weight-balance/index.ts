/** Weight and balance, as the registry takes it. */
import type { Reduction } from '../reduction.ts';
import { weightConditions, weightOptions, weightPoints } from './input.ts';
import { weightBalanceNote } from './note.ts';
import { predictWeightBalance } from './predict.ts';
import { reduceWeightBalance } from './reduce.ts';

export const weightBalance: Reduction = {
  kind: 'weight-balance',
  title: 'Weight and balance',
  answers: 'What does it weigh, where is its centre of gravity, and is each load inside with its uncertainty?',
  serves: ['weigh-empty-cg', 'loading-envelope-plan', 'weight-expansion'],
  needs: [],
  uses: [],
  roles: [],
  pointsSchema: weightPoints,
  optionsSchema: weightOptions,
  conditionsSchema: weightConditions,
  reduce: reduceWeightBalance,
  predict: predictWeightBalance,
  note: weightBalanceNote,
};
