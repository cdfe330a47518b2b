/** Method note of weight and balance. */
import type { MethodNote } from '../reduction.ts';

export const weightBalanceNote: MethodNote = {
  versions: [
    {
      version: '1.0',
      change: 'First version: weighing, load cases, ballast, each with the uncertainty carried through.',
    },
  ],
  summary: [
    'Wheel readings of each run are added to a mass and a centre of gravity; the mean of the runs is the result.',
    'What was aboard and does not belong to the empty airplane is taken off, what belongs and was missing is added.',
    'Each load case is the empty airplane plus its items; its uncertainty is that of the empty airplane and of the fuel.',
    'A case is inside only when the whole box of its uncertainty lies inside the envelope.',
    'Ballast is worked out from the lever, rounded up to what is on hand, and the case is worked out again.',
  ],
  formulas: [
    { says: 'Centre of gravity', formula: 'x = Σ(mᵢ xᵢ) / Σ mᵢ', source: 'ac-43-13-1b-ch10' },
    { says: 'A gain error shared by all readings', formula: 'changes Σ m, cancels in x', source: 'jcgm-100' },
    { says: 'Error of level', formula: 'Δx = h tan ε', source: 'practice' },
    { says: 'Ballast at arm x_b for a wanted x_r', formula: 'W_b = W (x_r − x) / (x_b − x_r)', source: 'faa-h-8083-1' },
    { says: 'Share of the mean aerodynamic chord', formula: '(x − x_LE) / c', source: 'faa-h-8083-1' },
  ],
  assumptions: [
    'Scale errors are independent unless one scale was moved round the wheels.',
    'The centre of gravity lies 0.5 m above the line of the wheels unless stated.',
    'Gasoline weighs 6 lb per US gallon, sure to 2 %, unless its density is stated.',
    'Masses of people and bags are as written; the pilot weighs them.',
  ],
  workedExample: {
    title: 'The rearmost loading of AC 43.13-1B, figure 10-11',
    lines: [
      '1169 lb at +10.6 in, 17 lb at −49 in, 170 lb at +16 in, 340 lb at +48 in, 240 lb at +22 in, 100 lb at +75.5 in',
      'Sum 2036 lb, moment 43 428 lb·in, centre of gravity +21.3 in; the limit is +21.9 in',
    ],
  },
  sources: ['ac-43-13-1b-ch10', 'faa-h-8083-1', 'faa-h-8083-25', 'jcgm-100', 'practice'],
};
