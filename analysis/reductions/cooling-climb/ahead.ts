/**
 * A climb that ended before its temperature peaked: what the next half of it would have brought. The heat balance is
 * fitted to the climb in its measured, falling air; power that falls with height is not in it, so it errs to the hot side.
 */
import {
  airResponse,
  fitHeating,
  type HeatingFit,
  type HeldRecord,
  slowPartAllowance,
  temperatureAfter,
} from '../../models/index.ts';
import { coverageFactor } from '../../numbers/index.ts';

export interface Ahead {
  /** s after the end of the climb */
  seconds: number[];
  /** K: middle, and the ends; the high one holds what warms slowly and the sensor's lag */
  expected: number[];
  low: number[];
  high: number[];
  /** length of the record it rests on, s */
  measured: number;
  tau: number;
  /** part of the high end that stands for what warms slowly, K */
  allowance: number;
}

/** Quoted for half as long again as the climb, at steps of this, s. */
const SHARE_AHEAD = 0.5;
const STEP = 30;
/** The air goes on as over the last of the climb, s. */
const AIR_TREND_SECONDS = 120;

/**
 * The next half of a climb.
 * @param record temperatures and air of the climb while nothing regulated, object
 * @param lag of the sensor, s
 * @returns what it would have read, or null where too little was read to say
 * @throws OutOfRange never: time constants of a fit are above 0
 */
export function aheadOf(record: HeldRecord, lag: number): Ahead | null {
  const fit = fitHeating(record);
  if (!fit) return null;
  const { dt, air, hot } = record;
  const n = hot.length;
  const more = Math.floor((SHARE_AHEAD * n * dt) / dt);
  const back = Math.min(n - 1, Math.round(AIR_TREND_SECONDS / dt));
  const trend = back > 0 ? ((air[n - 1] ?? 0) - (air[n - 1 - back] ?? 0)) / back : 0;
  const course = Float64Array.from({ length: n + more }, (_, i) =>
    i < n ? (air[i] ?? 0) : (air[n - 1] ?? 0) + trend * (i - n + 1),
  );
  const every = Math.max(1, Math.round(STEP / dt));
  const places = Array.from({ length: Math.floor(more / every) + 1 }, (_, k) => n - 1 + k * every);
  const rise = (hot.findLast((one) => !Number.isNaN(one)) ?? 0) - fit.start;
  const allowance = slowPartAllowance(rise);
  const bands = bandsAt(fit, course, dt, places);
  const lagging = lag * Math.max(0, slopeAtEnd(fit, course, dt, n));
  return {
    seconds: places.map((at) => (at - (n - 1)) * dt),
    expected: bands.map((one) => one.expected),
    low: bands.map((one) => one.low),
    high: bands.map((one) => one.high + allowance + lagging),
    measured: n * dt,
    tau: fit.tau,
    allowance,
  };
}

interface Band {
  expected: number;
  low: number;
  high: number;
}

function bandsAt(fit: HeatingFit, air: Float64Array, dt: number, places: readonly number[]): Band[] {
  const k = coverageFactor(fit.nu);
  const best = pathOf({ tau: fit.tau, start: fit.start, excess: fit.excess }, air, dt);
  const bands = places.map((at) => ({ expected: best(at), low: best(at), high: best(at) }));
  for (const one of fit.profile) {
    if (one.over > k * k) continue;
    const reach = one.excessU * Math.sqrt(k * k - one.over);
    for (const sign of [-1, 1]) {
      const away = sign * reach;
      const path = pathOf(
        { tau: one.tau, start: one.start + away * one.startPerExcess, excess: one.excess + away },
        air,
        dt,
      );
      places.forEach((at, i) => {
        const band = bands[i];
        if (!band) return;
        band.low = Math.min(band.low, path(at) - k * fit.stepBias);
        band.high = Math.max(band.high, path(at) + k * fit.stepBias);
      });
    }
  }
  return bands;
}

function pathOf(curve: { tau: number; start: number; excess: number }, air: Float64Array, dt: number) {
  const response = airResponse(air, dt, curve.tau);
  return (at: number) => (response[at] ?? 0) + temperatureAfter(curve.start, curve.excess, curve.tau, at * dt);
}

function slopeAtEnd(fit: HeatingFit, air: Float64Array, dt: number, n: number): number {
  const path = pathOf(fit, air, dt);
  const before = Math.max(0, n - 1 - Math.round(STEP / dt));
  return n > 1 ? (path(n - 1) - path(before)) / ((n - 1 - before) * dt) : 0;
}
