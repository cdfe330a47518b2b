/** A leg as the fit sees it: samples of what the air-data instruments and the satellites said at the same times. */

export interface LegSamples {
  /** indicated airspeed, m/s; NaN throughout where only speed over the ground was written */
  ias: Float64Array;
  /** pressure altitude by the sensed static pressure, m */
  height: Float64Array;
  /** temperature as the probe read it, K */
  air: Float64Array;
  /** velocity over the ground, m/s; along a course its component along the course */
  north: Float64Array;
  east: Float64Array;
}

export type LegRole = 'leg' | 'turn' | 'course';

export interface Leg {
  role: LegRole;
  /** which run of the flight it belongs to: blocks of one turn share it */
  run: number;
  label: string;
  flaps: string;
  fromSeconds: number;
  toSeconds: number;
  /** true when it was written by hand and has one sample only */
  written: boolean;
  samples: LegSamples;
  /** spacing of the samples, s */
  dt: number;
  /** share of the leg with all channels there, 0 to 1 */
  covered: number;
  /** kg, null where not known */
  mass: number | null;
  loadFactor: number;
  /** unit vector of a course flown on its heading; null where the velocity over the ground is known */
  along: { north: number; east: number } | null;
  /** standard uncertainty of a timed course's length, share of it; null where it was not timed over a length */
  lengthDoubt: number | null;
  /** mean indicated airspeed, m/s; NaN where not written */
  ias: number;
  /** recording step of the airspeed channel acts as a bias of this standard uncertainty, m/s */
  stepBias: number;
}

/**
 * Middle of a leg in time.
 * @param leg the leg
 * @returns seconds from the first record
 */
export function middleOf(leg: Leg): number {
  return (leg.fromSeconds + leg.toSeconds) / 2;
}

/**
 * Mean of a leg's samples.
 * @param values one a sample
 * @returns mean, unit of the values; NaN samples left out
 */
export function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  let n = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    sum += value;
    n += 1;
  }
  return n > 0 ? sum / n : Number.NaN;
}

/** Samples a leg is thinned to where only a change of the answer is wanted. */
const CONDENSED = 12;

/**
 * A leg with its samples averaged in groups: enough for the change that a small shift makes, at a fraction of the work.
 * @param leg the leg
 * @returns the leg with at most twelve samples
 */
export function condensed(leg: Leg): Leg {
  const n = leg.samples.ias.length;
  if (n <= CONDENSED) return leg;
  const thinned = (values: Float64Array) =>
    Float64Array.from({ length: CONDENSED }, (_, b) =>
      meanOf(values.subarray(Math.floor((b * n) / CONDENSED), Math.floor(((b + 1) * n) / CONDENSED))),
    );
  const { ias, height, air, north, east } = leg.samples;
  return {
    ...leg,
    samples: {
      ias: thinned(ias),
      height: thinned(height),
      air: thinned(air),
      north: thinned(north),
      east: thinned(east),
    },
  };
}
