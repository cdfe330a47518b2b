/** After shutdown: how hot it gets with nothing moving, and how long until it may be started again. Read, not fitted. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import type { PartLimits } from '../../models/index.ts';
import { combineUncertainty, median, stepEffect } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { ResultQuantity } from '../../results/index.ts';
import { show } from '../../units/index.ts';
import { USUAL_LAG } from './held-model.ts';
import { meanOf, STOPPED_BELOW } from './settings.ts';
import { slopeOf } from './slow-node.ts';
import { type HotTrace, sensorLag, type Trace } from './trace.ts';

/** A stop after at least this long running, itself at least this long, s. */
const RAN = 60;
const SOAKED = 60;
const MEDIAN_SECONDS = 10;
/** A maximum is a peak once the temperature has fallen by so much again, K. */
const FALLEN = 1;

interface Stop {
  /** first stopped sample, last one before a restart or the end */
  from: number;
  to: number;
}

/**
 * Peak and restart time of each shutdown in a run.
 * @param trace the run, object
 * @param airplane the description, or undefined
 * @param limits of the main temperature, object
 * @returns quantities; none where no shutdown was logged
 */
export function heatSoak(trace: Trace, airplane: Airplane | undefined, limits: PartLimits): ResultQuantity[] {
  return stopsOf(trace).flatMap((stop) => {
    const hottest = trace.main
      .map((hot) => ({ hot, values: medians(hot.values, stop, trace.grid.dt) }))
      .reduce((a, b) => (maximum(b.values) > maximum(a.values) ? b : a));
    const peak = peakOf(trace, stop, hottest.hot, hottest.values, airplane);
    return limits.restart === null
      ? [peak]
      : [peak, restartTime(trace, stop, hottest.hot, hottest.values, limits.restart, airplane)];
  });
}

function stopsOf(trace: Trace): Stop[] {
  const { speed, grid } = trace;
  const stops: Stop[] = [];
  let ran = 0;
  let from = -1;
  for (let i = 0; i <= speed.length; i += 1) {
    const n = i < speed.length ? (speed[i] ?? Number.NaN) : Number.POSITIVE_INFINITY;
    if (Number.isNaN(n)) continue;
    if (n < STOPPED_BELOW && i < speed.length) {
      if (from < 0) from = i;
      continue;
    }
    if (from >= 0) {
      const long = (i - from) * grid.dt >= SOAKED;
      if (long && ran * grid.dt >= RAN) stops.push({ from, to: i - 1 });
      if (long) ran = 0;
      from = -1;
    }
    ran += 1;
  }
  return stops;
}

function medians(values: Float64Array, { from, to }: Stop, dt: number): Float64Array {
  const half = Math.floor(MEDIAN_SECONDS / dt / 2);
  return Float64Array.from({ length: to - from + 1 }, (_, i) =>
    median(values.subarray(Math.max(from, from + i - half), Math.min(to, from + i + half) + 1)),
  );
}

const maximum = (values: Float64Array) =>
  values.reduce((most, value) => (Number.isNaN(value) ? most : Math.max(most, value)), Number.NEGATIVE_INFINITY);

function conditions(trace: Trace, stop: Stop, hot: HotTrace): ResultQuantity['conditions'] {
  const at = (i: number) => ({ value: trace.grid.start + i * trace.grid.dt, unit: 's' });
  const atStop = hot.values[stop.from];
  return {
    channel: hot.quantity,
    'shutdown-at': at(stop.from),
    'watched-until': at(stop.to),
    ...(atStop === undefined || Number.isNaN(atStop) ? {} : { 'at-shutdown': { value: atStop, unit: 'K' } }),
  };
}

function readingSources(hot: HotTrace, stop: Stop, values: Float64Array, airplane: Airplane | undefined) {
  const rest = Array.from(values, (value, i) => Math.abs((hot.values[stop.from + i] ?? Number.NaN) - value));
  const scatter = 1.4826 * median(rest);
  const effect = stepEffect(scatter, hot.step);
  const sensor = accuracyOf(airplane, hot.quantity);
  return [
    { part: 'noise' as const, u: Math.hypot(scatter / Math.sqrt(3), effect.bias), nu: 30 },
    { part: 'calibration' as const, u: sensor.u, nu: sensor.nu },
  ].filter((source) => source.u > 0);
}

function peakOf(
  trace: Trace,
  stop: Stop,
  hot: HotTrace,
  values: Float64Array,
  airplane: Airplane | undefined,
): ResultQuantity {
  const most = maximum(values);
  const at = values.indexOf(most);
  const last = values[values.length - 1] ?? Number.NaN;
  const fallen = most - last >= Math.max(FALLEN, 2 * hot.step);
  const base = {
    name: 'peak-after-shutdown',
    unit: 'K',
    conditions: { ...conditions(trace, stop, hot), 'time-after-shutdown': { value: at * trace.grid.dt, unit: 's' } },
  };
  if (!fallen) {
    const words = `still rising or level when the log ended: the peak is at least ${show(most, 'degC', { decimals: 1 }).text}; leave the recorder on`;
    return { ...base, value: null, u95: null, interval: [most, null], parts: {}, flags: [flag('bound-only', words)] };
  }
  const doubt = combineUncertainty(readingSources(hot, stop, values, airplane));
  return { ...base, value: most, u95: doubt.u95, parts: doubt.parts, flags: [] };
}

function restartTime(
  trace: Trace,
  stop: Stop,
  hot: HotTrace,
  values: Float64Array,
  restart: number,
  airplane: Airplane | undefined,
): ResultQuantity {
  const { dt } = trace.grid;
  const over = values.findLastIndex((value) => value >= restart);
  const base = {
    name: 'time-to-restart-temperature',
    unit: 's',
    conditions: { ...conditions(trace, stop, hot), below: { value: restart, unit: 'K' } },
  };
  const none = (interval: [number, null], one: Flag): ResultQuantity => ({
    ...base,
    value: null,
    u95: null,
    interval,
    parts: {},
    flags: [one],
  });
  if (over >= 0 && values.subarray(over + 1).every((value) => Number.isNaN(value))) {
    const seconds = (values.length - 1) * dt;
    return none(
      [seconds, null],
      flag(
        'bound-only',
        `still over the restart temperature when the log ended, ${Math.round(seconds)} s after shutdown`,
      ),
    );
  }
  if (over < 0) {
    return {
      ...base,
      value: 0,
      u95: 0,
      parts: {},
      flags: [flag('method-note', 'never over the restart temperature after this shutdown')],
    };
  }
  // A line through two minutes about the last reading over it: finer than the recorder's step, which a ramp dithers.
  const half = Math.ceil(60 / dt);
  const [from, to] = [Math.max(stop.from, stop.from + over - half), Math.min(stop.to, stop.from + over + half)];
  const rate = slopeOf(hot.values, from, to, dt);
  const middle = ((from + to) / 2 - stop.from) * dt;
  const lag = sensorLag(airplane, hot.part);
  const crossed = middle + (restart - (meanOf(hot.values, from, to) ?? restart)) / rate - (lag ?? USUAL_LAG);
  const doubt = combineUncertainty([
    ...readingSources(hot, stop, values, airplane).map((source) => ({ ...source, u: source.u / Math.abs(rate) })),
    // the line bends, and a lag nobody measured may as well be none
    { part: 'fit', u: Math.hypot(dt, lag === null ? USUAL_LAG : 0) / Math.sqrt(3), nu: Number.POSITIVE_INFINITY },
  ]);
  return { ...base, value: Math.max(0, crossed), u95: doubt.u95, parts: doubt.parts, flags: [] };
}
