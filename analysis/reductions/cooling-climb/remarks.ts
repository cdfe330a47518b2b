/** Whether a climb was flown as a cooling climb is: stabilised before, power and speed held, nothing moved, nothing missing. */
import { pressureAt } from '../../air/index.ts';
import { isStabilised } from '../../models/index.ts';
import { localParabola, quantile } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { fromSi, show, toSi } from '../../units/index.ts';
import { channelWords, type Found } from './answer.ts';
import type { Climb } from './climbs.ts';
import type { DoorLevel } from './regimes.ts';
import type { Trace } from './trace.ts';

// Common practice, no source.
/** Before the climb the temperature is looked at over this, and at least so much of it must be there, s. */
const BEFORE_SECONDS = 120;
const BEFORE_LEAST = 60;
/** Power takes this long to come up, s. */
const POWER_SECONDS = 30;
/** Engine speed may vary by this share of itself; 1 % is 3 % of power where the propeller is fixed. */
const SPEED_SHARE = 0.02;
/** Manifold pressure may vary by this share, by itself or beside the air's own. */
const PRESSURE_SHARE = 0.05;
/** Airspeed may vary by this about its middle, m/s. */
const SPEED_BAND = toSi(6, 'kt');
/** Longer without a reading than this is a gap worth a remark, s. */
const GAP_SECONDS = 10;

/**
 * Remarks on how a climb was flown.
 * @param trace the recording on its grid, object
 * @param climb which part, object
 * @param doors lasting positions of the exit door, by sample of the climb, or null
 * @param found its temperatures, list
 * @returns flags, each with the seconds of the climb
 */
export function climbRemarks(
  trace: Trace,
  climb: Climb,
  doors: readonly DoorLevel[] | null,
  found: readonly Found[],
): Flag[] {
  const { start, dt } = trace.grid;
  const span = { fromSeconds: start + climb.from * dt, toSeconds: start + climb.to * dt };
  const say = (code: Parameters<typeof flag>[0], words: string) => flag(code, `${climb.label}: ${words}`, span);
  const peaks = found.map((one) => one.peak.at);
  const last = Math.max(...peaks, 0);
  return [
    ...unsettled(trace, climb, found).map((words) => say('not-stabilised', words)),
    ...power(trace, climb).map((words) => say('power-not-constant', words)),
    ...speed(trace, climb).map((words) => say('speed-not-held', words)),
    ...moved(trace, climb, doors, last).map((words) => say('power-not-constant', words)),
    ...gaps(trace, climb).map((words) => say('gap', words)),
  ];
}

function unsettled(trace: Trace, climb: Climb, found: readonly Found[]): string[] {
  const { dt } = trace.grid;
  const from = Math.max(0, climb.from - Math.round(BEFORE_SECONDS / dt));
  const long = (climb.from - from) * dt;
  if (long < BEFORE_LEAST) {
    return [
      `the record begins ${Math.round(long)} s before it: whether the temperatures had settled is not known. What was still cold takes heat up and holds the peak down`,
    ];
  }
  const moving = trace.hot.flatMap((hot) => {
    if (!found.some((one) => one.course.quantity === hot.quantity)) return [];
    const before = hot.values.slice(from, climb.from);
    const rate = localParabola(before, dt, 2 * long).slope[before.length >> 1] ?? Number.NaN;
    if (Number.isNaN(rate) || isStabilised(rate)) return [];
    return [`${channelWords(hot.quantity)} ${show(rate, 'K/min', { decimals: 1 }).text}`];
  });
  return moving.length === 0
    ? []
    : [
        `not stabilised before it (under 2 °F a minute): ${moving.join(', ')}. What was still cold takes heat up and holds the peak down`,
      ];
}

function power(trace: Trace, climb: Climb): string[] {
  const from = climb.from + Math.round(POWER_SECONDS / trace.grid.dt);
  const part = (values: Float64Array | null) => values?.subarray(from, climb.to + 1);
  const words: string[] = [];
  const speedSpread = spreadOf(part(trace.speed));
  if (speedSpread > SPEED_SHARE) words.push(`engine speed varied by ${percent(speedSpread)}`);
  const manifold = part(trace.manifold);
  if (manifold) {
    // Either a boosted engine holds it, or a full throttle lets it fall with the air outside.
    const beside = manifold.map((value, i) => value / pressureAt(trace.height[from + i] ?? 0));
    const least = Math.min(spreadOf(manifold), spreadOf(beside));
    if (least > PRESSURE_SHARE)
      words.push(`manifold pressure varied by ${percent(least)} beside what the height explains`);
  }
  return words.length === 0 ? [] : [`power was not held: ${words.join(', ')}`];
}

/**
 * Whether the log shows that power fell with the air: manifold pressure went down as the air's own did.
 * @param trace the recording on its grid, object
 * @param climb which part, object
 * @returns true only where it was logged and did so
 */
export function powerFalls(trace: Trace, climb: Climb): boolean {
  if (!trace.manifold) return false;
  const from = climb.from + Math.round(POWER_SECONDS / trace.grid.dt);
  const manifold = trace.manifold.subarray(from, climb.to + 1);
  const outside = manifold.map((_, i) => pressureAt(trace.height[from + i] ?? 0));
  const beside = manifold.map((value, i) => value / (outside[i] ?? 1));
  return spreadOf(outside) > PRESSURE_SHARE && spreadOf(beside) < spreadOf(manifold) / 2;
}

function speed(trace: Trace, climb: Climb): string[] {
  if (!trace.airspeed) return ['no airspeed was logged: that the climb speed was held could not be checked'];
  const from = climb.from + Math.round(POWER_SECONDS / trace.grid.dt);
  const part = trace.airspeed.subarray(from, climb.to + 1);
  const [low, high] = [quantile(part, 0.05), quantile(part, 0.95)];
  if (high - low <= 2 * SPEED_BAND) return [];
  const kt = (si: number) => Math.round(fromSi(si, 'kt'));
  return [`airspeed went from ${kt(low)} to ${kt(high)} kt: the peak belongs to no one speed`];
}

function moved(trace: Trace, climb: Climb, doors: readonly DoorLevel[] | null, last: number): string[] {
  const settling = Math.round(POWER_SECONDS / trace.grid.dt);
  const words: string[] = [];
  const before = doors?.filter((one) => one.from <= last && one.to >= settling) ?? [];
  if (before.length > 1) {
    const positions = before.map((one) => `${Math.round(100 * one.exit)} %`).join(', then ');
    words.push(`the exit door stood at ${positions} before the last peak`);
  }
  for (const [values, what] of [
    [trace.fan, 'the fan was switched'],
    [trace.gear, 'the gear moved'],
    [trace.flap, 'the flaps moved'],
  ] as const) {
    const part = values?.subarray(climb.from + settling, climb.from + Math.max(settling, last) + 1);
    if (!part || part.length === 0) continue;
    const there = part.filter((value) => !Number.isNaN(value));
    if (there.length > 0 && quantile(there, 0.98) - quantile(there, 0.02) > 0.1) words.push(what);
  }
  return words.length === 0 ? [] : [`the configuration changed inside it: ${words.join('; ')}`];
}

function gaps(trace: Trace, climb: Climb): string[] {
  const { dt } = trace.grid;
  const longest = trace.hot.map((hot) => {
    let [most, since] = [0, 0];
    for (let i = climb.from; i <= climb.to; i += 1) {
      since = Number.isNaN(hot.values[i] ?? Number.NaN) ? since + 1 : 0;
      most = Math.max(most, since);
    }
    return { quantity: hot.quantity, seconds: most * dt };
  });
  const worth = longest.filter((one) => one.seconds >= Math.max(GAP_SECONDS, 3 * dt));
  if (worth.length === 0) return [];
  const words = worth.map((one) => `${channelWords(one.quantity)} ${Math.round(one.seconds)} s`).join(', ');
  return [`readings are missing inside it (${words}): a peak that fell there was not seen`];
}

// Middle nine tenths over the middle: spikes and a late start do not count.
function spreadOf(part: Float64Array | undefined): number {
  const there = part?.filter((value) => !Number.isNaN(value));
  if (!there || there.length < 10) return 0;
  const middle = quantile(there, 0.5);
  return middle > 0 ? (quantile(there, 0.95) - quantile(there, 0.05)) / middle : 0;
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
