/** The wind that came out: speed and direction in the middle of each outing, with its drift. */
import { speedOf, windFrom } from '../../air/index.ts';
import type { Combined } from '../../numbers/index.ts';
import { combined, type Doubt, randomPart, sensorSources } from './doubt.ts';
import { windFromUnknowns } from './fit.ts';
import { middleOf } from './leg.ts';
import { basisAt } from './wind-model.ts';

export interface WindAnswer {
  seconds: number;
  /** first and last second of the outing */
  fromSeconds: number;
  toSeconds: number;
  /** where the air moves to, m/s */
  north: number;
  east: number;
  speed: number;
  speedDoubt: Combined;
  /** where it comes from, rad, and its doubt; null where the wind is too light to have one */
  from: number;
  fromDoubt: Combined | null;
}

/** A direction is given when the wind is this many of its own standard uncertainties strong. */
const LIGHT = 3;

/**
 * Wind at a time of an outing.
 * @param doubt answer and what its uncertainty is made of
 * @param epoch which outing, from 0
 * @param seconds time, s
 * @returns the wind with its uncertainties, m/s and rad
 */
export function windAt(doubt: Doubt, epoch: number, seconds: number): WindAnswer {
  const { wind } = doubt.plan;
  const own = doubt.legs.filter((_, i) => wind.epochOf[i] === epoch);
  const basis = basisAt(wind, epoch, seconds, wind.height);
  const vector = windFromUnknowns(wind, doubt.solution.fit.wind, basis);
  const speed = speedOf(vector);
  const along = speed > 0 ? { north: vector.north / speed, east: vector.east / speed } : { north: 1, east: 0 };
  const across = { north: -along.east, east: along.north };
  const component = (unit: { north: number; east: number }) =>
    combined(
      randomPart(doubt, weights(doubt, basis, unit)),
      doubt.scatter.nu,
      sensorSources(doubt, (one) => {
        const there = windFromUnknowns(wind, one.fit.wind, basis);
        return there.north * unit.north + there.east * unit.east;
      }),
    );
  const speedDoubt = component(along);
  const sideways = component(across);
  return {
    seconds,
    fromSeconds: Math.min(...own.map((leg) => leg.fromSeconds)),
    toSeconds: Math.max(...own.map((leg) => leg.toSeconds)),
    ...vector,
    speed,
    speedDoubt,
    from: windFrom(vector),
    fromDoubt: speed > LIGHT * sideways.u ? scaled(sideways, 1 / speed) : null,
  };
}

/**
 * Times at which the wind is quoted: middle of each outing, and its ends where a drift was solved for.
 * @param doubt answer
 * @returns outing and time of each
 */
export function windTimes(doubt: Doubt): { epoch: number; seconds: number }[] {
  const { wind } = doubt.plan;
  return wind.middles.flatMap((middle, epoch) => {
    const times = doubt.legs.filter((_, i) => wind.epochOf[i] === epoch).map(middleOf);
    const ends = wind.drift ? [Math.min(...times), middle, Math.max(...times)] : [middle];
    return ends.map((seconds) => ({ epoch, seconds }));
  });
}

function weights(doubt: Doubt, basis: readonly number[], unit: { north: number; east: number }): number[] {
  const { wind } = doubt.plan;
  const ofWind = wind.axes.flatMap((axis) =>
    basis.map((term) => term * (axis.north * unit.north + axis.east * unit.east)),
  );
  return [...ofWind, ...doubt.solution.fit.speeds.map(() => 0)];
}

function scaled(one: Combined, factor: number): Combined {
  const parts = Object.fromEntries(Object.entries(one.parts).map(([name, value]) => [name, value * factor]));
  return { ...one, u: one.u * factor, u95: one.u95 * factor, parts };
}
