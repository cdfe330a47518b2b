/** One test point measured: curve, equilibrium with its uncertainty, or why there is none. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { fitHeating, type HeatingFit, type HeldRecord, noiseHalf, type Regime } from '../../models/index.ts';
import { type Combined, combineUncertainty, coverageFactor, type UncertaintySource } from '../../numbers/index.ts';
import { misfitOf, WILD } from './broken-curve.ts';
import type { TestPoint } from './points.ts';
import { meanOf } from './settings.ts';
import { slopeOf, slowNodeAllowance, stoodStill } from './slow-node.ts';
import { type HotTrace, sensorLag, type Trace } from './trace.ts';

export interface Measured {
  point: TestPoint;
  hot: HotTrace;
  regime: Regime;
  /** recording time, s */
  fromSeconds: number;
  toSeconds: number;
  /** means over the point, K; null where not logged */
  air: number | null;
  outside: number | null;
  /** temperature at start and end: of the curve where there is one, else as read, K */
  start: number;
  end: number;
  /** K/s over the last two minutes */
  rate: number;
  fit: HeatingFit | null;
  /** K, null where the data do not resolve it */
  equilibrium: number | null;
  /** of the equilibrium of this run */
  doubt: Combined | null;
  sources: UncertaintySource[];
  allowance: number;
  /** why there is no equilibrium */
  because: string | null;
  /** no heating curve describes the point at all */
  noCurve: boolean;
  /** relative change of engine speed from the first to the last third */
  speedDrift: number;
  lag: number | null;
}

/** An equilibrium counts as resolved when its noise is under this and the run this many time constants long. */
const NOISE_MOST = 2;
const LENGTHS_LEAST = 1.5;
const RATE_SECONDS = 120;

/**
 * Measure a point.
 * @param trace the run, object
 * @param point the point, object
 * @param hot the temperature to measure, of the point itself or the oil beside it, object
 * @param airplane the description, or undefined
 * @param fitted its curve where it was fitted before, or null
 * @returns the measured point
 * @throws OutOfRange never on a point with readings
 */
export function measurePoint(
  trace: Trace,
  point: TestPoint,
  hot: HotTrace,
  airplane: Airplane | undefined,
  fitted: HeatingFit | null = null,
): Measured {
  const { start, dt } = trace.grid;
  const { from, to } = point;
  const expected: Regime = hot === trace.oil && point.regime !== 'cooling' ? 'unknown' : point.regime;
  const open = expected === 'fully-open' || expected === 'unknown';
  const record = recordOf(trace, hot, from, to);
  const fit = open ? (fitted ?? fitHeating(record)) : null;
  const edge = Math.min(to - from, Math.ceil(10 / dt));
  const read = { start: meanOf(hot.values, from, from + edge), end: meanOf(hot.values, to - edge, to) };
  const begin = fit?.start ?? read.start ?? Number.NaN;
  const end = read.end ?? Number.NaN;
  const strange = fit ? departs(record, fit) : null;
  const because = strange?.words ?? (fit ? unresolved(trace, record, point, hot, fit) : null);
  const regime = strange?.regulates ? 'regulated' : expected;
  const drift = driftOf(trace.speed, from, to);
  const sources = fit ? sourcesOf(fit, accuracyOf(airplane, hot.quantity), drift) : [];
  const resolved = fit !== null && because === null;
  return {
    point,
    hot,
    regime,
    fromSeconds: start + from * dt,
    toSeconds: start + to * dt,
    air: meanOf(trace.air, from, to),
    outside: meanOf(trace.outside, from, to),
    start: begin,
    end,
    rate: slopeOf(hot.values, Math.max(from, to - Math.floor(RATE_SECONDS / dt)), to, dt),
    fit,
    equilibrium: resolved ? fit.air + fit.excess : null,
    doubt: resolved ? combineUncertainty(sources) : null,
    sources,
    allowance: open ? slowNodeAllowance(trace, hot, point, end - begin) : 0,
    because,
    noCurve: strange !== null,
    speedDrift: drift,
    lag: sensorLag(airplane, hot.part),
  };
}

function recordOf(trace: Trace, hot: HotTrace, from: number, to: number): HeldRecord {
  return {
    dt: trace.grid.dt,
    hot: hot.values.subarray(from, to + 1),
    air: trace.air ? trace.air.subarray(from, to + 1) : new Float64Array(to - from + 1),
    step: hot.step,
    perSample: hot.perSample,
  };
}

interface Departure {
  words: string;
  /** up and down again and again: something regulates */
  regulates: boolean;
}

/** So many swings by more than a kelvin under constant conditions are a valve at work, not gusts. */
const SWINGS = 4;

function departs(record: HeldRecord, fit: HeatingFit): Departure | null {
  const { swing, swings, breakAt } = misfitOf(record, fit);
  if (swings >= SWINGS) {
    return {
      words: `the temperature swings by ${swing.toFixed(1)} K about one heating curve under constant conditions: something regulates it`,
      regulates: true,
    };
  }
  if (breakAt !== null) {
    return {
      words: `the trace bends about ${Math.round(breakAt)} s into it as if something had been switched; set the segments by hand on either side`,
      regulates: false,
    };
  }
  if (swing > WILD) {
    return {
      words: `the temperature strays by ${swing.toFixed(1)} K from any heating curve: power or wind were not steady`,
      regulates: false,
    };
  }
  return null;
}

function unresolved(trace: Trace, record: HeldRecord, point: TestPoint, hot: HotTrace, fit: HeatingFit): string | null {
  const length = record.dt * record.hot.length;
  if (length < LENGTHS_LEAST * fit.tau && !stoodStill(trace, hot.values, point)) {
    return `${Math.round(length)} s is under one and a half of its time constant (${Math.round(fit.tau)} s)`;
  }
  const half = noiseHalf(fit);
  return half > NOISE_MOST ? `noise alone leaves it uncertain by ${half.toFixed(1)} K` : null;
}

function sourcesOf(fit: HeatingFit, accuracy: { u: number; nu: number }, drift: number): UncertaintySource[] {
  const sources: UncertaintySource[] = [
    { part: 'noise', u: noiseHalf(fit) / coverageFactor(fit.nu), nu: fit.nu },
    { part: 'noise', u: fit.stepBias, nu: Number.POSITIVE_INFINITY },
    // An offset of the sensor moves the equilibrium by itself; one of the air probe moves D and leaves T_eq.
    { part: 'calibration', u: accuracy.u, nu: accuracy.nu },
  ];
  // Heat goes at most with the cube of speed; half of a drift may stand in the wrong place.
  if (Math.abs(drift) > DRIFT_FROM) {
    const u = (1.5 * Math.abs(drift) * Math.abs(fit.excess)) / Math.sqrt(3);
    sources.push({ part: 'fit', u, nu: Number.POSITIVE_INFINITY });
  }
  return sources.filter((source) => source.u > 0);
}

/** Two per cent of power, with the cube of speed. */
export const DRIFT_FROM = 0.02 / 3;

function driftOf(speed: Float64Array, from: number, to: number): number {
  const third = Math.floor((to - from + 1) / 3);
  const first = meanOf(speed, from, from + third) ?? 0;
  const last = meanOf(speed, to - third, to) ?? 0;
  return first > 0 ? last / first - 1 : 0;
}
