/** The method note of ground cooling: what Help prints, with its history. A change of method makes old results stale. */
import type { MethodNote } from '../reduction.ts';

export const coolingNote: MethodNote = {
  versions: [{ version: 'cooling-ground 1', change: 'First version.' }],
  summary: [
    'The run is cut where engine speed, manifold pressure, exit or fan changed. The temperatures are not looked at for that.',
    'Each piece is cut again by what governs: warming below the thermostat, regulated by it or by a moving door, fully open, engine stopped. Only fully open samples enter a fit: while anything regulates, the temperature says nothing of margin, and what is still in hand is given instead.',
    'The first three sensor lags (20 s at least) after a change are dropped. A heating curve in the measured, smoothed air is fitted: where the temperature settles above the air (D), and its time constant. Every time constant from 40 s to twenty run lengths (an hour at most) is tried and every pair kept that the noise allows; the interval is the span of what is kept.',
    'Noise is what is left about the curve, with gusts counted as hanging together for 10 s at least. The recorder’s step counts as noise where the trace crosses it, as an error of its own where the trace stands still on one step; the sawtooth of rounding is not taken for gusts.',
    'A condition that cannot tell its time constant borrows it from the others of the run, within a factor two either way: the heat capacity is the airplane’s own.',
    'An equilibrium is given when noise leaves it within 2 K and the piece lasted one and a half time constants (or stood still for five minutes). Otherwise there is a bound and no value. A trace that bends or swings about its curve gives no value and says where.',
    'Block, oil and duct that warm more slowly do not show in a trace: 3 K, or a tenth of the rise, are allowed on the hot side unless oil and coolant both stood still for the last five minutes.',
    'On the hot day the air’s difference is added one to one; a correction that would make it cooler is shown and not credited. Thinner air and the rule itself put 2 % of the temperature over air into the uncertainty, the run-to-run scatter 1.5 K unless repeats show another.',
    'Time to a limit is a distribution with a share that never gets there, so no mean is given: the early figure (5 % of runs are there sooner, the slow part included), the middle one, and the share. Nothing is quoted beyond half as long again as the run.',
    'A limit that was passed in the run is timed as seen; the early figure stays that of the next run.',
    'Oil is fitted the same way over whole holds, whether or not the coolant’s thermostat was open.',
    'After shutdown the peak and the time until a restart is allowed are read from the trace.',
  ],
  formulas: [
    { says: 'heat balance', formula: 'dT/dt = (T_air(t) + D − T)/τ,  T_eq = T_air + D', source: 'memory' },
    { says: 'kept set', formula: 'RSS − RSS_min ≤ t² s² F for every (τ, D)', source: 'simulation' },
    {
      says: 'time to a limit',
      formula: 't = τ ln((T_eq − T_start)/(T_eq − L)) if T_eq > L, else never',
      source: 'memory',
    },
    {
      says: 'hot day',
      formula: 'T_corr = T + (T_hot − T_air),  T_hot = 100 °F − 3.6 °F per 1000 ft',
      source: '14cfr23-1043',
    },
    { says: 'still to come', formula: 'T_eq − T = τ dT/dt', source: 'memory' },
    { says: 'shown', formula: 'T + U95 + slow part ≤ L − margin', source: 'practice' },
  ],
  assumptions: [
    'Power and wind were steady; wind is not measured and another heading may differ.',
    'The engine’s heat and the radiator’s conductance do not change with temperature inside a piece.',
    'The thermostat is as the description says; it counts as fully open 2 K over its opening for 30 s (wax lag, common practice).',
    'A sensor’s error is one for the whole run: it cancels between conditions and not against a limit.',
    'The hottest coolant is at the sensor; for boiling 3 K more are taken.',
  ],
  workedExample: {
    title: 'A hold in air of 21 °C at a field 226 m high, limit 112 °C',
    lines: [
      'Coolant settles at 98.0 °C. Hot day at 226 m: 36.3 °C.',
      'Corrected: 98.0 + (36.3 − 21.0) = 113.3 °C; margin 112.0 − 113.3 = −1.3 K.',
      'From 80.0 °C with a time constant of 260 s the limit comes after 260 ln(33.3/1.3) = 844 s.',
      'Known to 2 K (standard uncertainty) and settling 1 K over a limit 42 K above the start, time constant 300 s to 10 %: 5 % of runs are there within 11 min, the middle one after 19 min, 31 % never.',
    ],
  },
  sources: [
    '14cfr23-1043',
    '14cfr25-1045',
    'cs22-1047',
    'sae-j1393',
    'iapws-saturation',
    'jcgm-100',
    'jcgm-101',
    'practice',
    'memory',
    'simulation',
  ],
};
