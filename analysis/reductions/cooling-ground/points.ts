/** Test points: each hold cut by what governs, its settling dropped; or the intervals a person set. */
import type { Airplane } from '../../airplane/index.ts';
import type { Governing, Regime, RegimeSpan } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { Segment } from '../../segments/index.ts';
import { show } from '../../units/index.ts';
import { regimesIn } from './regime.ts';
import { type Hold, meanOf, STOPPED_BELOW } from './settings.ts';
import { type HotTrace, sensorLag, type Trace } from './trace.ts';

export interface TestPoint {
  /** first and last sample used */
  from: number;
  to: number;
  hold: Hold;
  regime: Regime;
  hot: HotTrace;
  label: string;
  byHand: boolean;
}

/** Shorter stretches are not worth a row, s. */
const SHORTEST_POINT = 60;
/** Dropped after a change where the sensor's lag is not known, and never less, s. */
const SETTLING = 20;

/** Time dropped after a change of setting: three sensor lags. */
export function settlingSeconds(airplane: Airplane | undefined, part: HotTrace['part']): number {
  return Math.max(SETTLING, 3 * (sensorLag(airplane, part) ?? 0));
}

/**
 * Points found in a run.
 * @param trace the run, object
 * @param holds its holds, list
 * @param governing thermostat of the main temperature, `none` or null
 * @param settling dropped after each change, s
 * @returns points in order, with a remark on what was too short
 */
export function pointsFound(
  trace: Trace,
  holds: readonly Hold[],
  governing: Governing,
  settling: number,
): { points: TestPoint[]; flags: Flag[] } {
  const points: TestPoint[] = [];
  let short = 0;
  for (const hold of holds) {
    const about = hottestIn(trace, hold.from, hold.to);
    for (const span of regimesIn(trace, about, hold, governing)) {
      const from = settledFrom(trace, hold, span.from, settling);
      const hot = from > span.to ? about : hottestIn(trace, from, span.to);
      if ((span.to - from + 1) * trace.grid.dt < SHORTEST_POINT || !isRead(hot, from, span.to)) {
        short += span.regime === 'cooling' && hold.from === 0 ? 0 : 1;
        continue;
      }
      points.push({ from, to: span.to, hold, regime: span.regime, hot, label: labelOf(hold), byHand: false });
    }
  }
  const words = `${short} ${short === 1 ? 'stretch was' : 'stretches were'} shorter than ${SHORTEST_POINT} s after settling, or without readings, and left out`;
  return { points, flags: short > 0 ? [flag('excluded', words)] : [] };
}

/**
 * Points of the oil: whole holds with the engine running, for the coolant's thermostat does not cut them.
 * @param trace the run, object
 * @param holds its holds, list
 * @param oil the oil's temperature, object
 * @param settling dropped after each change, s
 * @returns points in order
 */
export function oilPoints(trace: Trace, holds: readonly Hold[], oil: HotTrace, settling: number): TestPoint[] {
  return holds.flatMap((hold) => {
    const from = settledFrom(trace, hold, hold.from, settling);
    const long = (hold.to - from + 1) * trace.grid.dt >= SHORTEST_POINT;
    if (hold.engineSpeed === 0 || hold.doorMoving || !long || !isRead(oil, from, hold.to)) return [];
    return [{ from, to: hold.to, hold, regime: 'unknown', hot: oil, label: labelOf(hold), byHand: false }];
  });
}

/**
 * Points of intervals set by hand: one each. Regulated or warming samples do not enter a fit even then.
 * @param trace the run, object
 * @param holds holds found, for where settings changed, list
 * @param governing thermostat of the main temperature, `none` or null
 * @param segments intervals, recording time, list
 * @param settling dropped after a change, s
 * @returns points in order, with the reason of each
 */
export function pointsSet(
  trace: Trace,
  holds: readonly Hold[],
  governing: Governing,
  segments: readonly Segment[],
  settling: number,
): { points: TestPoint[]; flags: Flag[] } {
  const points: TestPoint[] = [];
  const flags: Flag[] = [];
  const { start, dt, n } = trace.grid;
  for (const segment of segments) {
    const words = { fromSeconds: segment.fromSeconds, toSeconds: segment.toSeconds };
    const first = Math.max(0, Math.ceil((segment.fromSeconds - start) / dt - 1e-6));
    const to = Math.min(n - 1, Math.floor((segment.toSeconds - start) / dt + 1e-6));
    const changedAt = holds.findLast((hold) => hold.from <= first)?.changedAt ?? null;
    const hold = holdSet(trace, holds, first, to, changedAt);
    const spans = regimesIn(trace, hottestIn(trace, first, to), hold, governing);
    const span = governs(spans, dt);
    const from = span ? settledFrom(trace, hold, span.from, settling) : first;
    if (!span || span.to <= from || !isRead(hottestIn(trace, from, span.to), from, span.to)) {
      flags.push(flag('excluded', 'a segment set by hand holds no readings that could be used', words));
      continue;
    }
    flags.push(flag('set-by-hand', `${segment.label ?? labelOf(hold)}: ${segment.reason}`, words));
    const hot = hottestIn(trace, from, span.to);
    points.push({
      from,
      to: span.to,
      hold,
      regime: span.regime,
      hot,
      label: segment.label ?? labelOf(hold),
      byHand: true,
    });
  }
  return { points, flags };
}

// Settings inside an interval set by hand: the means, and the hold it lies in for what moved.
function holdSet(trace: Trace, holds: readonly Hold[], from: number, to: number, changedAt: number | null): Hold {
  const speed = meanOf(trace.speed, from, to) ?? 0;
  const fan = meanOf(trace.fan, from, to);
  return {
    from,
    to,
    engineSpeed: speed < STOPPED_BELOW ? 0 : speed,
    exit: meanOf(trace.door, from, to),
    fan: fan === null ? null : fan > 0.5,
    manifold: meanOf(trace.manifold, from, to),
    doorMoving: holds.some((hold) => hold.doorMoving && hold.from <= from && hold.to >= to),
    changedAt,
  };
}

// The open part where it is long enough, else what governed longest.
function governs(spans: readonly RegimeSpan[], dt: number): RegimeSpan | undefined {
  const long = (span: RegimeSpan) => (span.to - span.from + 1) * dt;
  const byLength = spans.toSorted((a, b) => long(b) - long(a));
  return byLength.find((span) => span.regime === 'fully-open' && long(span) >= SHORTEST_POINT) ?? byLength[0];
}

// A reading a minute apart is taken after the change, not in it.
function settledFrom(trace: Trace, hold: Hold, from: number, settling: number): number {
  const { dt } = trace.grid;
  if (hold.changedAt === null || dt > settling || hold.engineSpeed === 0) return from;
  return Math.max(from, hold.changedAt + Math.ceil(settling / dt));
}

function isRead(hot: HotTrace, from: number, to: number): boolean {
  let n = 0;
  for (let i = from; i <= to; i += 1) if (!Number.isNaN(hot.values[i] ?? Number.NaN)) n += 1;
  return n >= Math.max(3, 0.5 * (to - from + 1));
}

/** Of several heads the one that is hottest at the end of an interval. */
function hottestIn(trace: Trace, from: number, to: number): HotTrace {
  const late = Math.max(from, to - Math.floor((to - from) / 5));
  const level = (hot: HotTrace) => meanOf(hot.values, late, to) ?? Number.NEGATIVE_INFINITY;
  const [first, ...others] = trace.main;
  if (!first) throw new Error('a trace has at least one temperature');
  return others.reduce((hottest, hot) => (level(hot) > level(hottest) ? hot : hottest), first);
}

/** `2500 rpm, exit 60 %, fan on` */
export function labelOf(hold: Hold): string {
  const parts = [
    hold.engineSpeed === 0 ? 'engine stopped' : show(roundTo10(hold.engineSpeed), 'rpm', { decimals: 0 }).text,
  ];
  if (hold.exit !== null) parts.push(hold.doorMoving ? 'exit moving' : `exit ${Math.round(100 * hold.exit)} %`);
  if (hold.fan !== null) parts.push(hold.fan ? 'fan on' : 'fan off');
  return parts.join(', ');
}

function roundTo10(perSecond: number): number {
  const unit = STOPPED_BELOW / 30; // ten revolutions a minute
  return Math.round(perSecond / unit) * unit;
}
