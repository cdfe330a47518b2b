/** Method note of the climb reduction; a change of numbers is a new version at the top. */
import type { MethodNote } from '../reduction.ts';

export const climbNote: MethodNote = {
  versions: [
    {
      version: 'climb 2',
      change:
        'a run lies between the times at which airspeed settles and leaves; the scatter within pairs counts; the wind that pairs show is taken out of each climb; mass, span efficiency and sensors are in the U95 of every optimum; a mass nobody stated is not brought to another',
    },
    { version: 'climb 1', change: 'first version' },
  ],
  summary: [
    'A climb is measured from where its airspeed has come within 0.3 m/s of what it holds over the next minute to where it leaves it. At one airspeed pressure altitude is a straight line against time. Its slope is the rate on the altimeter; air warmer than standard is stretched, so the rate through space (tapeline) is greater by the ratio of air temperature to standard temperature.',
    'A climb that gains speed spends power on it. The specific excess power adds that back; the climb at constant calibrated airspeed then loses what true airspeed gains with height.',
    'Rates are brought to one mass: inertia, and induced drag by the span efficiency. Where nobody stated the mass they stand for that at the first record, whatever it was. They stand for the density altitude flown; power is not corrected. That fits an unsupercharged engine at fixed throttle; for a boosted engine it does not hold, and the temperature of the day belongs beside the figure.',
    'Two climbs at one speed through one height on opposite headings are one point: a wind that changes with height cancels in their mean. Its size, one for the band, shows in the differences of the pairs and is taken out of each climb’s standard rate; what is left of the differences tells how much one climb scatters. A climb without a partner is flagged and carries an allowance.',
    'Rate against airspeed is a curve with a top. Two forms are fitted, a quadratic and that of constant power; the one that suits the propeller is quoted and half the difference of both counts as doubt. A top at the end of the speeds flown, or a curve that does not bend beyond its scatter, gets no number.',
    'U95 of an observed rate is that of this climb between the times stated: recorder noise, the choice of its ends, altimeter and thermometer. In air that rises and sinks other ends give another rate, and the height gained over the time taken is not the slope. U95 of a standard rate holds for what one climb says of the airplane: the scatter between climbs, with an expectation of 0.15 m/s within a factor 3 while there are few, is in it, and so are mass and wind. Best speeds, best rate and ceilings are reckoned once more with mass, span efficiency, wind, altimeter and thermometer off by their doubt.',
    'Ceilings are straight lines of the best rate against density altitude carried beyond what was flown, for the next climb, and refused where they reach further than twice the height between the bands. The same line against density lies on the other side of the truth; half their distance counts as doubt.',
  ],
  formulas: [
    { says: 'tapeline', formula: 'dh/dt = dHp/dt T / T_std(Hp)', source: 'ftm-108' },
    { says: 'energy', formula: 'Ps = dh/dt + (V/g) dV/dt', source: 'ftm-108' },
    { says: 'mass', formula: 'Ps_s = (Wt Ps - dD V) / Ws', source: 'ftm-108' },
    {
      says: 'induced drag',
      formula: 'dD = 2 (Ws^2 - Wt^2) / (rho0 Ve^2 S pi e A)',
      source: 'ftm-108',
    },
    { says: 'constant calibrated airspeed', formula: 'RC = Ps / (1 + (V/g) dV/dh)', source: 'ftm-108' },
    { says: 'wind that changes with height', formula: 'dRC = RC (V/g) dW/dh', source: 'ftm-108' },
    { says: 'curve, fixed propeller', formula: 'RC = a + b V + c V^2', source: 'simulation' },
    { says: 'curve, constant-speed propeller', formula: 'RC = a - b V^3 - c/V', source: 'simulation' },
    { says: 'best rate, best angle', formula: 'dRC/dV = 0; d(RC/V)/dV = 0', source: 'memory' },
    { says: 'doubt of a top', formula: 'quantiles over draws of the curve from a multivariate t', source: 'jcgm-101' },
    { says: 'doubt of a rate', formula: 'U95 = t(0.975, nu) sqrt(sum u_i^2)', source: 'jcgm-100' },
  ],
  assumptions: [
    'The air neither rose nor sank along the climb: what it did is in the scatter between climbs, not in the climb.',
    'Power, mixture and propeller setting were those of the climb the figure is used for.',
    'Best angle is for still air, and takes no account of getting over an obstacle from a standing start.',
    'Where no airspeed calibration is accepted, indicated airspeed is taken as calibrated and said so.',
    'A climb under 120 s and 300 m is reduced and flagged.',
  ],
  workedExample: {
    title:
      '300 m on the altimeter in 60 s at 3000 ft, 10 K warmer than standard, 45 m/s true airspeed growing by 0.05 m/s each second',
    lines: [
      'Altimeter: 300/60 = 5.000 m/s. Standard at 914.4 m is 282.21 K, the air 292.21 K.',
      'Tapeline: 5.000 × 292.21/282.21 = 5.177 m/s.',
      'Energy: 5.177 + 45/9.80665 × 0.05 = 5.407 m/s.',
      'From 1000 to 1080 kg, S 12.4 m², A 6.53, e 0.75, 42.3 m/s equivalent: dD = 76.5 N.',
      'Inertia: 1000/1080 × 5.407 = 5.006 m/s. Induced drag takes 76.5 × 45/(1080 × 9.80665) = 0.325 m/s: 4.681 m/s.',
      'True airspeed grows 0.00216 m/s each metre at constant calibrated airspeed: CCF = 1/(1 + 45/9.80665 × 0.00216) = 0.990, rate 4.635 m/s.',
    ],
  },
  sources: ['ftm-108', 'jcgm-100', 'jcgm-101', 'simulation', 'practice', 'memory'],
};
