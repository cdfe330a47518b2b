/** Wrenlet's ground run: the hottest head's gauge read every minute with a pencil, at a check speed and then at idle. */
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { randomFrom } from './random.ts';
import { rounded } from './signals.ts';

const SEED = 1202;
const AIR = toSi(17, 'degC');
const AIR_RISE_PER_HOUR = 1.2;
/** head above air in the steady state, K, and time constant, s: fins cool by propeller wash alone */
const HOLDS = [
  { engineSpeed: toSi(1000, 'rpm'), seconds: 360, excess: 118, timeConstant: 330 },
  { engineSpeed: toSi(1700, 'rpm'), seconds: 960, excess: 166, timeConstant: 240 },
  { engineSpeed: toSi(1000, 'rpm'), seconds: 480, excess: 118, timeConstant: 330 },
];

/** The card's figures and the truth behind them. */
export function wrenletGroundRun() {
  const random = randomFrom(SEED, 'wrenlet ground run');
  const stated = (si: number, step: number, unit: string) => ({ value: Number(rounded(fromSi(si, unit), step)), unit });
  const points: unknown[] = [];
  const segments: unknown[] = [];
  let head = AIR + 41;
  let t = 0;
  for (const hold of HOLDS) {
    const from = t;
    for (; t < from + hold.seconds; t += 1) {
      const air = AIR + (AIR_RISE_PER_HOUR * t) / 3600;
      if (t % 60 === 0) {
        points.push({
          time: { value: t / 60, unit: 'min' },
          'cylinder-head-temperature': stated(head + 0.5 * random.normal(), 1, 'degC'),
          'outside-air-temperature': stated(air + 0.2 * random.normal(), 0.5, 'degC'),
          'engine-speed': stated(hold.engineSpeed, 10, 'rpm'),
        });
      }
      head += (air + hold.excess - head) / hold.timeConstant;
    }
    const airMean = AIR + (AIR_RISE_PER_HOUR * (from + hold.seconds / 2)) / 3600;
    segments.push({
      fromSeconds: from,
      toSeconds: t,
      engineSpeed: hold.engineSpeed,
      airMean,
      equilibrium: airMean + hold.excess,
      equilibriumOverAir: hold.excess,
      timeConstant: hold.timeConstant,
    });
  }
  return { points: { kind: 'cooling-ground', points }, truth: { seed: SEED, segments } };
}
