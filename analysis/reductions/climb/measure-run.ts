/** From the samples of one climb to its means, its tapeline rate and the doubt of that rate. */
import {
  altitudeCorrection,
  densityAltitude,
  equivalentAirspeed,
  impactPressure,
  L,
  machOf,
  pressureAt,
  standardTemperature,
  staticTemperature,
  tapelineRate,
  trueAirspeed,
} from '../../air/index.ts';
import { fitLine, median, scatterWithin, smooth } from '../../numbers/index.ts';
import type { Flag } from '../../remarks/index.ts';
import type { ClimbRun, Doubt } from './run.ts';

/** The samples of one climb on the altimeter's times; NaN where missing. SI. */
export interface ClimbSamples {
  t: Float64Array;
  Hp: Float64Array;
  ias: Float64Array;
  airTemperature: Float64Array;
  /** longest step that is no gap, s */
  hold: number;
}

/** How airspeed, static pressure and probe are read in this airplane. */
export interface AirData {
  /** calibrated airspeed of an indicated one, m/s */
  cas(ias: number): number;
  /** true where airspeed and altimeter share one static port and the error is taken to be the static source's */
  staticError: boolean;
  /** recovery factor of the probe; 0 where the channel is static already */
  recovery: number;
}

/** What is known about a run beside its samples. */
export interface RunFacts {
  file: string;
  label: string;
  heading: number | null;
  mass: number | null;
  engineSpeed: number | null;
  manifoldPressure: number | null;
  fuelFlow: number | null;
  /** who set the ends of the run */
  ends: 'found' | 'byHand';
  flags: Flag[];
}

/** u and ends of a slope need at least this many samples and this long */
const LEAST_SAMPLES = 20;
const LEAST_SECONDS = 20;
/**
 * The ends of a run are a choice: each is moved in by this much, s, and the change of the rate is carried. Found by the
 * machine: half the window over which the finder looks at rates of change, and half a slow swing of the airplane. Set by
 * hand on the trace: a few seconds, common practice, no source.
 */
const END_SHIFT = { found: 10, byHand: 3 } as const;
// Shorter wander than this is taken for the recorder, longer for the airplane.
const NOISE_WIDTH = 4;

/**
 * Means and rate of one climb.
 * @param samples on the altimeter's times, SI
 * @param air how the channels are to be read
 * @param facts what else is known of the run
 * @returns the run, or null when fewer than 20 samples or 20 s are usable
 * @throws OutOfRange when a value lies outside the relations of air data
 * @source regression of pressure altitude; tapeline by T/T_standard at mid [ftm-108]
 */
export function measureRun(samples: ClimbSamples, air: AirData, facts: RunFacts): ClimbRun | null {
  const kept: number[] = [];
  samples.t.forEach((_, i) => {
    if ([samples.Hp, samples.ias].every((channel) => Number.isFinite(channel[i]))) kept.push(i);
  });
  const at = (channel: Float64Array, i: number) => channel[i] ?? Number.NaN;
  const t = Float64Array.from(kept, (i) => at(samples.t, i));
  const first = t[0] ?? 0;
  const last = t[t.length - 1] ?? 0;
  if (t.length < LEAST_SAMPLES || last - first < LEAST_SECONDS) return null;

  const casOf = Float64Array.from(kept, (i) => air.cas(at(samples.ias, i)));
  const Hp = Float64Array.from(kept, (i, k) => {
    const height = at(samples.Hp, i);
    if (!air.staticError) return height;
    const dps = impactPressure(at(casOf, k)) - impactPressure(at(samples.ias, i));
    return height + altitudeCorrection(dps, height);
  });
  const cas = mean(casOf);
  const mid = mean(Hp);
  const p = pressureAt(mid);
  // Off the standard day sample by sample: a median of the temperatures themselves belongs to another height than the mean.
  const offStandard = Float64Array.from(kept, (i, k) => at(samples.airTemperature, i) - standardTemperature(at(Hp, k)));
  const temperature = standardTemperature(mid) + median(offStandard.filter(Number.isFinite));
  const mach = machOf(impactPressure(cas), p);
  const T = staticTemperature(temperature, mach, air.recovery);
  const tas = trueAirspeed(cas, p, T);

  const line = fitLine(t, Hp);
  const toTapeline = tapelineRate(1, T, mid);
  const rate = line.slope * toTapeline;
  const tasSlope = fitLine(
    t,
    Float64Array.from(casOf, (one, k) => trueAirspeed(one, pressureAt(at(Hp, k)), T)),
  );
  // In a climb the air cools, which lowers true airspeed at constant Mach: half of the lapse acts through a = sqrt(gamma R T).
  const cooling = airCooling(samples, kept, t, rate);
  return {
    file: facts.file,
    label: facts.label,
    fromSeconds: first,
    toSeconds: last,
    ias: mean(Float64Array.from(kept, (i) => at(samples.ias, i))),
    cas,
    tas,
    eas: equivalentAirspeed(cas, p),
    Hp: mid,
    Hd: densityAltitude(p, T),
    p,
    T,
    heading: facts.heading,
    mass: facts.mass,
    rate,
    noise: scaled(slopeNoise(t, Hp, samples.hold), toTapeline),
    ends: { u: endChoice(t, Hp, line.slope, facts.ends) * toTapeline, nu: 8 },
    dVdt: tasSlope.slope + (0.5 * tas * cooling) / T,
    gained: line.slope * (last - first),
    engineSpeed: facts.engineSpeed,
    manifoldPressure: facts.manifoldPressure,
    fuelFlow: facts.fuelFlow,
    flags: facts.flags,
  };
}

const scaled = (doubt: Doubt, factor: number): Doubt => ({ ...doubt, u: doubt.u * factor });
const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value / values.length, 0);

// The recorder's own noise: what is quicker than the airplane can be, with its correlation.
function slopeNoise(t: Float64Array, Hp: Float64Array, hold: number): Doubt {
  const n = t.length;
  const first = t[0] ?? 0;
  const span = (t[n - 1] ?? first) - first;
  const dt = span / (n - 1);
  const line = fitLine(t, Hp);
  const slow = smooth(t, line.residuals, NOISE_WIDTH, Math.max(hold, 2 * dt));
  const fast = line.residuals.map((value, i) => value - (slow[i] ?? 0));
  const { s, inflation, nEff } = scatterWithin(fast, dt, dt, 2);
  const u = (s * Math.sqrt((12 * inflation) / n)) / span;
  return { u, nu: Math.max(3, nEff - 2) };
}

// Half the range of the slopes with either end moved in, as rectangular.
function endChoice(t: Float64Array, Hp: Float64Array, slope: number, ends: RunFacts['ends']): number {
  const first = t[0] ?? 0;
  const last = t[t.length - 1] ?? 0;
  const shift = Math.min(END_SHIFT[ends], (last - first) / 3);
  const between = (from: number, to: number) => {
    const inside = [...t.keys()].filter((i) => (t[i] ?? 0) >= from && (t[i] ?? 0) <= to);
    return fitLine(
      inside.map((i) => t[i] ?? Number.NaN),
      inside.map((i) => Hp[i] ?? Number.NaN),
    ).slope;
  };
  const others = [between(first + shift, last), between(first, last - shift), slope];
  // Speed still settling at ends that were found shows in the chord, which hangs on the ends, more than in the slope.
  if (ends === 'found') others.push(chord(t, Hp));
  return (Math.max(...others) - Math.min(...others)) / 2 / Math.sqrt(3);
}

// Rate of change of air temperature along the climb, K/s: from the probe where it shows it, else the standard lapse.
function airCooling(samples: ClimbSamples, kept: readonly number[], t: Float64Array, rate: number): number {
  const values = Float64Array.from(kept, (i) => samples.airTemperature[i] ?? Number.NaN);
  if (values.filter(Number.isFinite).length < LEAST_SAMPLES) return STANDARD_LAPSE * rate;
  const line = fitLine(t, values);
  const span = (t[t.length - 1] ?? 0) - (t[0] ?? 0);
  return line.uSlope * span < 0.5 ? line.slope : STANDARD_LAPSE * rate;
}

const STANDARD_LAPSE = -L;

// Rate between the means of the first and the last few seconds.
function chord(t: Float64Array, Hp: Float64Array): number {
  const first = t[0] ?? 0;
  const last = t[t.length - 1] ?? 0;
  const meanOver = (from: number, to: number) => {
    const inside = [...t.keys()].filter((i) => (t[i] ?? 0) >= from && (t[i] ?? 0) <= to);
    const of = (values: Float64Array) => inside.reduce((sum, i) => sum + (values[i] ?? 0) / inside.length, 0);
    return { t: of(t), H: of(Hp) };
  };
  const [start, end] = [meanOver(first, first + NOISE_WIDTH), meanOver(last - NOISE_WIDTH, last)];
  return (end.H - start.H) / (end.t - start.t);
}
