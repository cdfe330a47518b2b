/** Prediction before test: what rate the next climb at a speed and height will show, at the standard mass. */
import { coverageFactor } from '../../numbers/index.ts';
import { OutOfRange, parsedBy } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import { fromSi } from '../../units/index.ts';
import type { Prediction } from '../reduction.ts';
import { type ClimbBand, type ClimbModel, climbModelSchema } from './climb-model.ts';
import { climbConditions } from './input.ts';
import { tasAtDensityAltitude } from './optima.ts';
import { curveHalfWidth, curveRate } from './rate-curve.ts';

/** Heights this near to a band's middle count as flown, m; the same as what one band holds together. */
const NEAR_BAND = 150;
/** A mass this near to the standard one is the same mass, share. */
const SAME_MASS = 0.02;

/**
 * Predict the standard rate of climb.
 * @param result a climb result
 * @param conditions calibrated airspeed, density altitude, and mass where it matters
 * @returns prediction interval for the next climb, or a refusal outside what was flown
 * @throws InputProblem when the conditions do not fit their schema
 */
export function predictClimb(result: Result, conditions: unknown): Prediction {
  const given = parsedBy(climbConditions, conditions, 'bad-request');
  const model = climbModelSchema.safeParse(result.model?.climb);
  if (!model.success || model.data.bands.length === 0)
    return refused('this result carries no curve of rate against airspeed');
  const { mass } = model.data;
  const asked = given.mass?.si;
  if (asked !== undefined && mass === null)
    return refused(`nobody stated the mass these rates stand for: they are not carried to ${asked.toFixed(0)} kg`);
  if (asked !== undefined && mass !== null && Math.abs(asked - mass) > SAME_MASS * mass)
    return refused(`the rates stand for ${mass.toFixed(0)} kg and are not carried to ${asked.toFixed(0)} kg`);
  const cas = given['calibrated-airspeed'].si;
  const Hd = given['density-altitude'].si;
  try {
    const { rate, half } = between(model.data, cas, Hd);
    return {
      kind: 'climb',
      status: 'predicted',
      quantities: [
        {
          name: 'rate-standard',
          unit: 'm/s',
          value: rate,
          low: rate - half,
          high: rate + half,
          conditions: {
            'calibrated-airspeed': { value: cas, unit: 'm/s' },
            'density-altitude': { value: Hd, unit: 'm' },
            ...(mass === null ? {} : { mass: { value: mass, unit: 'kg' } }),
          },
          why: 'curve of the nearest bands with its doubt, and the scatter of one more climb',
        },
      ],
      tables: [],
      flags: [],
    };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(error.message);
  }
}

function between(model: ClimbModel, cas: number, Hd: number): { rate: number; half: number } {
  const bands = [...model.bands].sort((a, b) => a.Hd - b.Hd);
  const below = bands.findLast((band) => band.Hd <= Hd);
  const above = bands.find((band) => band.Hd > Hd);
  const near = [below, above].filter((band) => band !== undefined && Math.abs(band.Hd - Hd) <= NEAR_BAND);
  const [only] = near;
  if (below && above) {
    const [a, b] = [atBand(below, cas), atBand(above, cas)];
    const w = (Hd - below.Hd) / (above.Hd - below.Hd);
    return { rate: a.rate * (1 - w) + b.rate * w, half: Math.max(a.half, b.half) };
  }
  if (!only) {
    const heights = bands.map((band) => `${fromSi(band.Hd, 'ft').toFixed(0)} ft`).join(', ');
    throw new OutOfRange('density altitude in m', Hd, `the bands flown: ${heights}`);
  }
  const { rate, half } = atBand(only, cas);
  return { rate: rate + only.lapse * (Hd - only.Hd), half };
}

function atBand(band: ClimbBand, cas: number): { rate: number; half: number } {
  const V = tasAtDensityAltitude(cas, band.Hd);
  const [first, last] = band.flown;
  if (!(V >= first && V <= last))
    throw new OutOfRange('true airspeed', V, `the speeds flown, ${first.toFixed(1)} to ${last.toFixed(1)} m/s`);
  const rate = curveRate(band.form, band.parameters, V);
  const next = curveHalfWidth({ curve: band, scatter: { s: band.s } }, V, true);
  return { rate, half: Math.hypot(next, coverageFactor(Number.POSITIVE_INFINITY) * band.common) };
}

function refused(reason: string): Prediction {
  return { kind: 'climb', status: 'refused', reason, quantities: [], tables: [], flags: [] };
}
