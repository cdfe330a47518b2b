/**
 * What a held condition will do next: settle, pass a limit, or neither, as a distribution. Its parts are the kept set
 * of the fit, the sensor, the run-to-run scatter, and on the hot side the slow part that no trace shows.
 */
import { quantileOfSorted, selected } from '../../numbers/index.ts';
import type { Draws } from './draws.ts';
import type { HeldModel } from './held-model.ts';

/** Where the next run starts and in what air, K. */
export interface Start {
  temperature: number;
  air: number;
}

export interface TimeToLimit {
  /** 5 % of runs are there earlier; Infinity when fewer than that ever are */
  early: number;
  /** Infinity when fewer than half ever are */
  median: number;
  never: number;
}

export interface Band {
  value: number;
  low: number;
  high: number;
}

/** The next run of one condition, drawn many times. */
export interface Outlook {
  model: HeldModel;
  /** s to a limit, K */
  timeToLimit(start: Start, limit: number): TimeToLimit;
  /** what the sensor will read at times, s: 95 % prediction band, the slow part in its hot end, K */
  expectedAt(start: Start, times: readonly number[]): Band[];
}

/** Share of runs that may be at the limit before the operating figure. */
const EARLY = 0.05;
/** A band printed in whole kelvins needs no more draws. */
const BAND_DRAWS = 2000;

/**
 * The outlook of a condition.
 * @param model the condition as measured, object
 * @param draws standard draws, object
 * @returns its outlook
 */
export function outlookOf(model: HeldModel, draws: Draws): Outlook {
  const next = drawn(model, draws);
  return {
    model,
    timeToLimit: (start, limit) => {
      // in air that the airplane's own probe has not read, the probe's error counts
      const otherAir = model.air !== null && start.air !== model.air;
      const plain = timesTo(next, model, start, limit, { allowance: 0, otherAir });
      const never = plain.reduce((count, t) => count + (t === Number.POSITIVE_INFINITY ? 1 : 0), 0) / plain.length;
      const median = selected(plain, Math.floor((plain.length - 1) / 2));
      const hot =
        model.allowance > 0 ? timesTo(next, model, start, limit, { allowance: model.allowance, otherAir }) : plain;
      const early = selected(hot, Math.floor(EARLY * (hot.length - 1)));
      const lag = (t: number) => Math.max(0, t - model.lag); // the sensor shows what the coolant was a lag ago
      return { early: lag(early), median: lag(median), never };
    },
    expectedAt: (start, times) => {
      const count = Math.min(BAND_DRAWS, draws.size);
      const at = new Float64Array(count);
      return times.map((time) => {
        for (let i = 0; i < count; i += 1) {
          const settled = start.air + (next.excess[i] ?? 0);
          at[i] = settled + (start.temperature - settled) * Math.exp(-time / (next.tau[i] ?? 1));
        }
        at.sort();
        const slow = model.allowance * (1 - Math.exp(-time / model.tau));
        return {
          value: quantileOfSorted(at, 0.5),
          low: quantileOfSorted(at, 0.025),
          high: quantileOfSorted(at, 0.975) + slow,
        };
      });
    },
  };
}

interface Drawn {
  tau: Float64Array;
  excess: Float64Array;
  /** start of the measured run in this draw, K */
  start: Float64Array;
  sensor: Float64Array;
  air: Float64Array;
}

// t = tau ln((T_eq - T_start)/(T_eq - L)), as models/heat-balance, written out for ten thousand draws at a time.
function timesTo(
  next: Drawn,
  model: HeldModel,
  start: Start,
  limit: number,
  { allowance, otherAir }: { allowance: number; otherAir: boolean },
): Float64Array {
  const offset = start.temperature - model.start;
  return next.tau.map((tau, i) => {
    const bound = limit - (next.sensor[i] ?? 0);
    const from = (next.start[i] ?? 0) + offset;
    if (from >= bound) return 0;
    const settled = start.air + (next.excess[i] ?? 0) + allowance + (otherAir ? (next.air[i] ?? 0) : 0);
    return settled <= bound ? Number.POSITIVE_INFINITY : tau * Math.log((settled - from) / (settled - bound));
  });
}

// One draw of the next run: a time constant by its weight, D at it, another run's D beside it, the sensor's error.
function drawn(model: HeldModel, draws: Draws): Drawn {
  const weights: number[] = [];
  let total = 0;
  for (const one of model.kept) {
    total += one.weight;
    weights.push(total);
  }
  const noise = draws.student('noise', model.nu);
  const repeat = draws.student('repeat', model.repeatNu);
  const sensor = draws.student('sensor', model.sensorNu);
  const even = draws.even();
  const next: Drawn = {
    tau: new Float64Array(draws.size),
    excess: new Float64Array(draws.size),
    start: new Float64Array(draws.size),
    sensor: sensor.map((value) => model.sensorU * value),
    air: draws.student('air', model.sensorNu).map((value) => model.airU * value),
  };
  for (let i = 0; i < draws.size; i += 1) {
    const at = (even[i] ?? 0) * total;
    let k = 0;
    while (k < weights.length - 1 && (weights[k] ?? 0) < at) k += 1;
    const one = model.kept[k];
    if (!one) continue;
    const shift = one.excessU * (noise[i] ?? 0);
    next.tau[i] = one.tau;
    next.excess[i] = one.excess + shift + model.repeatU * (repeat[i] ?? 0);
    next.start[i] = one.start + one.startPerExcess * shift;
  }
  return next;
}
