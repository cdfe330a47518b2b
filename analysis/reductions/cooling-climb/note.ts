/** The method note of cooling climbs: what Help prints, with its history. A change of method makes old results stale. */
import type { MethodNote } from '../reduction.ts';

export const coolingClimbNote: MethodNote = {
  versions: [{ version: 'cooling-climb 1', change: 'First version.' }],
  summary: [
    'A climb is found by height and airspeed alone: rising by 150 ft/min or more within 8 kt of one airspeed for three minutes and 300 m, breaks of a minute in which nothing was lost included. Of several those count that gained at least half as much as the highest. No temperature is looked at for that. A climb can be set by hand.',
    'Every temperature the airplane has is followed through it: a median over 10 s takes out spikes, a parabola over 60 s smooths without cutting a rounded top. Only readings of the climb itself enter, for before and after it the engine was set otherwise.',
    'The highest smoothed value is the peak, and it is one only when the temperature has fallen since by 1 K, twice the recording step and three times its noise, or when five minutes have gone by. Otherwise it had not peaked: no value is given, and the heat balance, fitted to the climb in its falling air, says what the next half of it would have brought.',
    'What governs is asked first: while a thermostat or a door that sets itself regulates, the temperature says nothing of margin, and what is still in hand is given instead.',
    'The air is taken at the first time of the highest value, static (the probe’s ram rise removed), outside the airplane; what the radiator takes in is kept beside it as recirculation.',
    'On the hot day the air’s difference is added one to one, seven tenths of it to barrels; a correction that would make it cooler is shown and not credited.',
    'The margin is asked at every instant of the climb against the hot day at that height. The least one need not be at the highest reading, and stands beside the margin at the peak. For coolant the margin to boiling is asked the same way, at the pressure of each height plus the cap’s.',
    'Noise is what is left about the smoothed trace, hanging together for 10 s at least. The recorder’s step is an error of its own where the trace stands still on one step. Coolant and air sensor count once each; a probe of unknown recovery, an air probe that lags and the altimeter are in the calibration part.',
    'A climb that began with the thermostat regulating begins at the same temperature on any day: one to one then adds too much, by what is left of the start at the peak. The rule’s value is kept, and the interval reaches that much further to the favourable side alone.',
    'The rule itself puts 2 % of the temperature over air into the uncertainty; one climb differs from the next by 1.5 K unless climbs flown alike show another figure. Where the log does not show that power fell with the air (manifold pressure going down as the air’s does), thinner air may make the hot day hotter than one to one, 4.5 % of the temperature over air for 23 K: the interval reaches that much further to the hot side, and shown must leave room for it.',
    'Figures written on a card are taken as they stand: the highest reading, what a rounded top between two readings may hide added to its uncertainty.',
    'A prediction of the next climb follows the air one to one, holds the scatter of two climbs, and is refused more than 25 K or 600 m away from what was flown, or at another airspeed.',
  ],
  formulas: [
    {
      says: 'hot day',
      formula: 'T_corr = T_peak + k (T_hot(Hp) − T_air),  T_hot = 100 °F − 3.6 °F per 1000 ft, −69.7 °F at least',
      source: '14cfr23-1043',
    },
    { says: 'factor', formula: 'k = 1 for coolant, oil and heads; 0.7 for air-cooled barrels', source: '14cfr23-1043' },
    {
      says: 'margin',
      formula: 'limit − T_corr, and the least of limit − [T(t) + k (T_hot(Hp(t)) − T_air(t))]',
      source: '14cfr23-1043',
    },
    { says: 'climb', formula: 'stabilise, full power, on until five minutes past the peak', source: '14cfr23-1047' },
    { says: 'static air', formula: 'T = T_i / (1 + 0.2 K M²)', source: 'rp-1046' },
    { says: 'not peaked', formula: 'dT/dt = (T_air(t) + D − T)/τ, half as long again as the climb', source: 'memory' },
    { says: 'shown', formula: 'T_corr + U95 ≤ L − margin', source: 'practice' },
  ],
  assumptions: [
    'The climb was flown as the next one will be: power, airspeed, door, mixture. What was not held is flagged.',
    'The thermostat is as the description says; it counts as fully open 2 K over its opening for 30 s (wax lag, common practice).',
    'A sensor’s error is one for the whole flight.',
    'The climb started with the airplane warmed through; one that started cold peaks lower, and is flagged.',
    'The hottest coolant is at the sensor; for boiling 3 K more are taken.',
  ],
  workedExample: {
    title: 'Published rule on round figures: coolant peaks at 212 °F at 6500 ft in air of 48 °F',
    lines: [
      'Hot day at 6500 ft: 100 − 6.5 × 3.6 = 76.6 °F.',
      'Corrected: 212 + 1.0 × (76.6 − 48) = 240.6 °F (115.9 °C).',
      'A cylinder barrel at 380 °F in 35 °F at 8000 ft: 380 + 0.7 × (71.2 − 35) = 405.3 °F.',
      'Against a limit of 250 °F the coolant keeps 250 − 240.6 = 9.4 °F (5.2 K). With a U95 of 4 K it is shown: 115.9 + 4.0 ≤ 121.1 °C.',
    ],
  },
  sources: [
    '14cfr23-1043',
    '14cfr23-1047',
    '14cfr25-1045',
    'cs22-1047',
    'rp-1046',
    'iapws-saturation',
    'jcgm-100',
    'practice',
    'memory',
    'simulation',
  ],
};
