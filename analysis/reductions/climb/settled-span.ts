/**
 * Where in a found climb airspeed has settled. A climb begins with speed turned into height and ends with height turned
 * into speed: a rate taken over either is not the engine's. Airspeed alone decides; the rate has no say, since picking
 * steady-looking rates picks high or low ones.
 *
 * The run begins where airspeed, after its last excursion beyond a handling band, first comes near to what it holds
 * next. How near: a speed dV still to be lost within about 10 s (half a slow swing of the airplane, pi V / (sqrt(2) g))
 * gives V dV / g of height to the first seconds of a run of T seconds, which adds 3 (V dV / g) 10 s / T^2 to the slope
 * of a line. For T = 60 s, 38 m/s and 4 m/s of climb a quarter of a per cent of the rate is dV = 0.3 m/s. That is the
 * shortest run worth measuring; in a longer one the same speed matters less. The end is the same, backwards, but no
 * further back than the finder's window can have let the levelling off in.
 */
import { medianDeviation, smooth } from '../../numbers/index.ts';
import { toSi } from '../../units/index.ts';
import type { ClimbSamples } from './measure-run.ts';

/**
 * Airspeed is smoothed over this long, s, no longer than the approach to a speed: a recorder of one value a second with
 * 0.7 kt of noise and steps of 1 kt then leaves 0.1 m/s.
 */
const SMOOTHING = 10;
/** What it holds is its mean over this long, s: two swings of a hand-flown airspeed, whose period is some 25 s. */
const BESIDE = 60;
/** Airspeed this near to what it holds has settled, m/s: see above. */
const NEAR = 0.3;
/** It has also settled within this, m/s, if half a swing later it has come no nearer: then it wanders, it does not approach. */
const STRAY = 0.5;
const HALF_SWING = 10;
/** Airspeed further than this from what it holds next is on its way: handling band, common practice, no source. */
const BAND = toSi(2, 'kt');
/** In gusts that throw it about further, this many robust standard deviations of its later wander. */
const GUSTS = 3;
/** Later than this, s, airspeed that strays is a pilot who wanders, not one who is still coming to his speed. */
const WITHIN = 60;
/** Half the window over which the finder looks at rates of change, s. */
const LATE = 10;

/**
 * Ends between which airspeed has settled.
 * @param samples of a found climb, SI
 * @param keep shortest climb to leave, s
 * @param gap step between samples that is a gap, s
 * @returns ends, s; those of the samples where it never settles while enough is left
 */
export function settledSpan(samples: ClimbSamples, keep: number, gap: number): { from: number; to: number } {
  const smoothed = smooth(samples.t, samples.ias, SMOOTHING, gap);
  const known = [...samples.t.keys()].filter((i) => Number.isFinite(smoothed[i]));
  const t = known.map((i) => samples.t[i] ?? Number.NaN);
  const speed = known.map((i) => smoothed[i] ?? Number.NaN);
  const [first = 0, last = 0] = [samples.t[0], samples.t.at(-1)];
  const half = (first + last) / 2;
  const early = t.findLastIndex((time) => time <= Math.min(first + WITHIN, half, last - keep)) + 1;
  const away = speed.map((value, i) => Math.abs(value - meanBeside(t, speed, i, BESIDE)));
  const { deviation } = medianDeviation(speed.filter((_, i) => (t[i] ?? 0) >= half));
  const band = Math.max(BAND, GUSTS * deviation);
  const reached = away.slice(0, early).findLastIndex((value) => value > band);
  const later = (i: number) => t.findIndex((time) => time >= (t[i] ?? 0) + HALF_SWING);
  const settled = (value: number, i: number) =>
    value <= NEAR || (value <= STRAY && value <= (away[later(i)] ?? Number.POSITIVE_INFINITY));
  const from = away.findIndex((value, i) => i > reached && i < early && settled(value, i));
  const back = speed.map((value, i) => Math.abs(value - meanBeside(t, speed, i, -BESIDE)));
  const to = back.findLastIndex((value, i) => (t[i] ?? 0) >= Math.max(last - LATE, half) && value <= NEAR);
  return { from: t[from] ?? first, to: t[to] ?? last };
}

// Mean of the values from one sample on, so many seconds ahead or, where negative, back.
function meanBeside(t: readonly number[], values: readonly number[], at: number, seconds: number): number {
  const step = Math.sign(seconds);
  let [sum, count] = [0, 0];
  for (let i = at; i >= 0 && i < t.length; i += step) {
    if (Math.abs((t[i] ?? 0) - (t[at] ?? 0)) > Math.abs(seconds)) break;
    sum += values[i] ?? 0;
    count += 1;
  }
  return sum / count;
}
