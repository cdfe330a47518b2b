/** The method note of flight cooling: what Help prints, with its history. A change of method makes old results stale. */
import type { MethodNote } from '../reduction.ts';

export const coolingFlightNote: MethodNote = {
  versions: [{ version: 'cooling-flight 1', change: 'First version.' }],
  summary: [
    'Stretches of steady flight are found by power (2 %), airspeed (3 kt), height (30 m), engine speed (2 %) and door (3 % of travel); each of two minutes or more after 20 s. The temperatures are not looked at for that.',
    'At the end of such a stretch each temperature counts where it changed by less than 1 °F a minute for a minute and more; its level is the mean of the last 90 s. One still moving is left out and named. Coolant, oil and heads come to rest in their own time, so one stretch may serve one and not the other.',
    'What regulates comes first: only samples with the thermostat fully open (2 K over its opening for 30 s) say what the cooling can do. At other points the share of the thermostat and of the door still in hand is given, and no margin.',
    'For each temperature the logarithm of its excess over outside air is fitted, by least squares, on the logarithms of fuel flow, dynamic pressure and door; every point weighs by its excess, so that an error of one kelvin counts alike everywhere. Where no fuel flow is known, manifold pressure times engine speed stands for it.',
    'Three fully open points are wanted for each exponent. What was not varied has no exponent and is named; what went with another (in level flight speed follows power) shares one, and is named.',
    'The doubt of the fit is the scatter between points, never the noise within one: the usual 1.5 K within a factor three while few have been flown, what was seen once there are many. Each sensor is shifted by its own standard uncertainty and the fit made again.',
    'A prediction is for the next reading of the same instruments: doubt of the curve and scatter of one more point, taken as soon as the points were. It is refused outside the convex hull of the settings flown, with the distance and the nearest setting flown, and beyond 300 m and 30 K of the heights and the air flown.',
    'On the hot day the air’s difference is added one to one; a correction that would make it cooler is shown and not credited. Thinner air and the rule itself put 2 % of the excess into the uncertainty; a prediction in other air carries what density does to a cooler at equal dynamic pressure.',
    'A slow part of the heat path may still be warming where a temperature looks at rest: ten minutes of the rate seen are allowed on the hot side.',
    'Each corner of what was varied is tried as one more point, and the widest prediction that would be left is given.',
  ],
  formulas: [
    { says: 'excess', formula: 'ln(T − T_air) = c + a ln FF + b ln q + d ln door', source: 'own' },
    { says: 'dynamic pressure', formula: 'q = ρ0 Ve²/2', source: 'rp-1046' },
    { says: 'weights', formula: 'Σ (T_i − T_air,i)² (ln excess − fit)² least', source: 'own' },
    { says: 'next reading', formula: 'U95 = t √(u_curve² + s² + u_sensors² + u_air²)', source: 'jcgm-100' },
    {
      says: 'hot day',
      formula: 'T_corr = T + (T_hot − T_air),  T_hot = 100 °F − 3.6 °F per 1000 ft',
      source: '14cfr23-1043',
    },
    { says: 'still to come', formula: 'dT/dt × 600 s, where it was rising', source: 'practice' },
    { says: 'other air', formula: 'u = (0.4/√3) |ln ρ/ρ_flown| (T − T_air)', source: 'practice' },
    { says: 'shown', formula: 'T_corr + U95 + still to come ≤ limit − margin', source: 'practice' },
  ],
  assumptions: [
    'One mixture technique and one propeller setting for each power; the engine sheds a share of its fuel that does not change otherwise.',
    'The door’s effect follows a power of its position. Nearer to shut than 5 % its leak is not known and the point stays out of the fit.',
    'Outside air is that of the probe less its recovery; air already warmed before the radiator is in the excess.',
    'The fuel-flow meter’s own error is in the level of the fit and cancels while the same meter is read.',
    'A sensor’s error is one for the whole flight.',
    'A margin for an oil cooler whose thermostat is not known is taken as if nothing regulated: it errs to the hot side.',
  ],
  workedExample: {
    title: 'Three powers at one speed and door; coolant over air 60.0, 66.0 and 72.6 K at 20, 24 and 28.8 L/h',
    lines: [
      'Each step of 1.2 in fuel flow is one of 1.1 in excess: a = ln 1.1/ln 1.2 = 0.523.',
      'At 26 L/h: 66.0 × (26/24)^0.523 = 68.8 K over air.',
      'In air of 12.0 °C at 3000 ft: 80.8 °C. Hot day at 3000 ft: 100 − 10.8 = 89.2 °F = 31.8 °C.',
      'Corrected: 80.8 + (31.8 − 12.0) = 100.6 °C; limit 112.0 °C: margin 11.4 K.',
      'Rule and thinner air: 0.02 × 68.8 = 1.4 K, standard.',
    ],
  },
  sources: ['14cfr23-1043', 'cs22-1047', 'rp-1046', 'jcgm-100', 'own', 'practice', 'memory', 'simulation'],
};
