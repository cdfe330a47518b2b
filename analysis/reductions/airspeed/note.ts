/** Method note of the airspeed calibration; a change of numbers is a new version at the top. */
import type { MethodNote } from '../reduction.ts';

export const airspeedNote: MethodNote = {
  versions: [{ version: 'airspeed 1', change: 'first version' }],
  summary: [
    'Each steady leg says how fast the airplane moved over the ground and where to. Take the wind away, and what is left is true airspeed; the airspeed indicator, the altimeter and the thermometer say what it should have been. What is missing is the error of the airspeed system.',
    'All legs are solved together: one wind for the flight, drifting in time where there are legs enough to tell, and one correction for each speed and flap setting. Every leg keeps its own airspeed, height and temperature, so a leg flown two knots off speed is no error.',
    'The residual of a leg is formed sample by sample before it is averaged: the pilot’s wander is in the airspeed and in the ground speed alike and cancels.',
    'The doubt comes from how much the legs differ from each other, not from the noise within them, which is far smaller. Few legs are helped by an expectation (0.5 m/s a leg, within a factor 2.5); with four degrees of freedom and more the legs speak for themselves.',
    'A smooth curve through the speeds is carried to other reductions and the handbook. It follows the lift coefficient, so it goes from one weight to another, and what the speeds stand off it is added to its doubt.',
    'Turns serve like legs, an eighth of a turn each; neighbouring eighths that feel the same gust count as fewer. Runs on a measured course, flown on its heading with drift allowed, serve by their speed along the course. Figures from a card serve like a log.',
  ],
  formulas: [
    { says: 'every leg', formula: '| Vg - W | = TAS(IAS + d, p, T)', source: 'gray-1998' },
    { says: 'on a course, on its heading', formula: '(Vg - W) . course = TAS', source: 'gray-1998' },
    { says: 'impact pressure', formula: 'qc = p0 ((1 + 0.2 (CAS/a0)^2)^3.5 - 1)', source: 'rp-1046' },
    { says: 'static pressure error, if the pitot is right', formula: 'dp_s = qc(CAS) - qc(IAS)', source: 'rp-1046' },
    { says: 'static pressure', formula: 'p = p(altimeter) - dp_s', source: 'rp-1046' },
    { says: 'air temperature', formula: 'T = T_i / (1 + 0.2 K M^2)', source: 'rp-1046' },
    { says: 'curve', formula: 'dp_s / qc = polynomial in n m g / (S qc)', source: 'memory' },
    { says: 'altitude to add', formula: 'dh = dp_s / (rho_std(Hp) g0)', source: 'icao-7488' },
    {
      says: 'doubt',
      formula: 'U95 = t(0.975, nu) s sqrt(diag (J’J)^-1), with sensors and lack of fit in quadrature',
      source: 'jcgm-100',
    },
    {
      says: 'dilution',
      formula: 'D = sqrt(diag (J’J)^-1) of true airspeed; four legs at right angles 0.50, refused above 2.0',
      source: 'simulation',
    },
  ],
  assumptions: [
    'Air moved level and alike along each leg: a steady rise of 0.3 m/s is nothing, a wave is not.',
    'All of the error is the static source’s and the altimeter shares it, unless the airplane’s description says that it does not.',
    'The correction holds for the channel that was logged; the instrument’s own error is inside it. The position error proper carries that error in its uncertainty.',
    'Air is taken as dry unless a dew point is written; the doubt is carried unless the air temperature is stated as exact.',
    'Nothing is said beyond the airspeeds flown.',
  ],
  workedExample: {
    title: 'Three legs on any tracks (Gray 1998): ground speeds 140, 112 and 120 kt on tracks 192°, 283° and 20°',
    lines: [
      'Components north and east, kt: (-136.9, -29.1), (25.2, -109.1), (112.8, 41.0).',
      'For each leg |Vg|² = 2 Vg·W + (TAS² - |W|²). Three legs, three unknowns: W north, W east, and the bracket.',
      'Subtract the first from the others: two equations for the wind. It moves to (-14.5, 14.7) kt: 20.6 kt from 315°.',
      'TAS = |Vg - W| = |(-136.9 + 14.5, -29.1 - 14.7)| = 130.0 kt, the same for each leg.',
      'Nothing is left over: the three legs say nothing about their own error. With 0.5 m/s expected of a leg, dilution 0.76 and the factor for no degrees of freedom, U95 is about 3.2 kt.',
    ],
  },
  sources: ['gray-1998', 'rp-1046', 'icao-7488', 'jcgm-100', '14cfr23-1323', '14cfr23-1325', 'simulation', 'practice'],
};
