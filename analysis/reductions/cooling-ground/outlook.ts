/**
 * What a held condition will do next: settle, pass a limit, or neither, as a distribution. Its parts are the kept set
 * of the fit, the sensor, the run-to-run scatter, and on the hot side the slow part that no trace shows.
 */
import { timeToReach } from '../../models/index.ts';
import { quantileOfSorted } from '../../numbers/index.ts';
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

/** Share of runs that may be at the limit before the operating figure. */
const EARLY = 0.05;

/**
 * Time to a limit of the next run in a condition.
 * @param model the condition as measured, object
 * @param draws standard draws, object
 * @param start temperature and air, K
 * @param limit K
 * @returns early and median time, s, and share that never gets there
 * @throws OutOfRange never: time constants of a model are above 0
 */
export function timeToLimit(model: HeldModel, draws: Draws, start: Start, limit: number): TimeToLimit {
  const plain = timesOf(model, draws, start, limit, 0);
  const slow = model.allowance > 0 ? timesOf(model, draws, start, limit, model.allowance) : plain;
  const never = plain.reduce((count, t) => count + (t === Number.POSITIVE_INFINITY ? 1 : 0), 0) / plain.length;
  const lag = (t: number) => Math.max(0, t - model.lag); // the sensor shows what the coolant was a lag ago
  return {
    early: lag(quantileOfSorted(slow, EARLY)),
    median: lag(quantileOfSorted(plain, 0.5)),
    never,
  };
}

function timesOf(model: HeldModel, draws: Draws, start: Start, limit: number, allowance: number): Float64Array {
  const pick = picker(model, draws);
  const offset = start.temperature - model.start;
  return new Float64Array(draws.size)
    .map((_, i) => {
      const one = pick(i);
      return timeToReach(one.start + offset, start.air + one.excess + allowance, one.tau, limit - one.sensor);
    })
    .sort();
}

export interface Band {
  value: number;
  low: number;
  high: number;
}

/**
 * Temperature expected a time after the start of the next run, 95 % prediction band, the slow part in its hot end.
 * @param model the condition as measured, object
 * @param draws standard draws, object
 * @param start temperature and air, K
 * @param times s
 * @returns one band a time, K, as the sensor will read
 */
export function expectedAt(model: HeldModel, draws: Draws, start: Start, times: readonly number[]): Band[] {
  const pick = picker(model, draws);
  return times.map((time) => {
    const sorted = new Float64Array(draws.size)
      .map((_, i) => {
        const { tau, excess } = pick(i);
        const settled = start.air + excess;
        return settled + (start.temperature - settled) * Math.exp(-time / tau);
      })
      .sort();
    const slow = model.allowance * (1 - Math.exp(-time / model.tau));
    return {
      value: quantileOfSorted(sorted, 0.5),
      low: quantileOfSorted(sorted, 0.025),
      high: quantileOfSorted(sorted, 0.975) + slow,
    };
  });
}

interface Drawn {
  tau: number;
  excess: number;
  start: number;
  sensor: number;
}

// One draw of the next run: a time constant by its weight, D at it, another run's D beside it, the sensor's error.
function picker(model: HeldModel, draws: Draws): (i: number) => Drawn {
  const { kept } = model;
  const weights: number[] = [];
  let total = 0;
  for (const one of kept) {
    total += one.weight;
    weights.push(total);
  }
  const noise = draws.student('noise', model.nu);
  const repeat = draws.student('repeat', model.repeatNu);
  const sensor = draws.student('sensor', model.sensorNu);
  const even = draws.even();
  const lookup = new Uint16Array(draws.size);
  for (let i = 0; i < draws.size; i += 1) {
    const at = (even[i] ?? 0) * total;
    let k = 0;
    while (k < weights.length - 1 && (weights[k] ?? 0) < at) k += 1;
    lookup[i] = k;
  }
  return (i) => {
    const one = kept[lookup[i] ?? 0];
    if (!one) throw new Error('a model keeps at least one curve');
    const shift = one.excessU * (noise[i] ?? 0);
    return {
      tau: one.tau,
      excess: one.excess + shift + model.repeatU * (repeat[i] ?? 0),
      start: one.start + one.startPerExcess * shift,
      sensor: model.sensorU * (sensor[i] ?? 0),
    };
  };
}
