/**
 * Where a found climb has settled. A climb begins with speed turned into height: a rate taken there is not the engine's.
 * Airspeed alone decides; the rate has no say, since picking steady-looking rates picks high or low ones.
 */
import { g0 } from '../../air/index.ts';
import { fitLine, slopes } from '../../numbers/index.ts';
import type { ClimbSamples } from './measure-run.ts';

/** acceleration is looked at over this long, s */
const WINDOW = 20;
/** settled once speed gives or takes less than this share of the rate: chosen on three simulated flights, no source */
const SHARE = 0.04;

/**
 * Time from which airspeed has settled.
 * @param samples of a found climb, SI
 * @param keep shortest climb to leave, s
 * @param gap step between samples that is a gap, s
 * @returns start, s; the first sample where it never settles while enough is left
 */
export function settledStart(samples: ClimbSamples, keep: number, gap: number): number {
  const { t, Hp, ias } = samples;
  const first = t[0] ?? 0;
  const last = t[t.length - 1] ?? first;
  const whole = [...t.keys()].filter((i) => Number.isFinite(Hp[i]));
  if (whole.length < 3) return first;
  const rate = fitLine(
    whole.map((i) => t[i] ?? 0),
    whole.map((i) => Hp[i] ?? 0),
  ).slope;
  const acceleration = slopes(t, ias, WINDOW, gap);
  for (let i = 0; i < t.length; i += 1) {
    const middle = t[i] ?? 0;
    if (middle < first + WINDOW / 2) continue;
    const start = middle - WINDOW / 2;
    if (last - start < keep) break;
    const given = Math.abs(((ias[i] ?? Number.NaN) / g0) * (acceleration[i] ?? Number.NaN));
    if (given < SHARE * Math.abs(rate)) return start;
  }
  return first;
}
