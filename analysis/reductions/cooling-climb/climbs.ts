/** The climbs of a recording: long ones found by height and airspeed alone, or set by hand. No temperature is looked at. */
import type { Recording } from '../../logs/index.ts';
import { localParabola, median } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { type Condition, findHeld, placeSegments, type SegmentEdit, within } from '../../segments/index.ts';
import { fromSi, toSi } from '../../units/index.ts';
import type { Trace } from './trace.ts';

/** One climb: first and last sample of the trace. */
export interface Climb {
  from: number;
  to: number;
  label: string;
  reason: string;
  byHand: boolean;
}

// All common practice, no source.
/** Rate of height that is a climb, m/s, looked at over a window, s; it ends when the rate has all but gone. */
const LEAST_RATE = 0.75;
const ENDS_AT = 0.25;
const RATE_SECONDS = 20;
/** One climb is flown at one speed, within this either way, m/s. */
const SPEED_BAND = toSi(8, 'kt');
/** Two climbs with a shorter break between them, in which no height to speak of was lost, are one: s and m. */
const BREAK_SECONDS = 60;
const BREAK_LOST = 30;
/** A climb that can show how a temperature behaves: s and m. A shorter one is taken when it is set by hand. */
const LEAST_SECONDS = 180;
const LEAST_GAIN = 300;
const LEAST_BY_HAND = 60;
/** Of several climbs those count that gained at least this share of the highest: the others led up to something else. */
const SHARE_OF_HIGHEST = 0.5;
/** Worth a remark though too short, s. */
const REMARK_SECONDS = 100;

export interface Climbs {
  climbs: Climb[];
  flags: Flag[];
}

/**
 * Climbs found by themselves.
 * @param trace the recording on its grid, object
 * @returns climbs in order, with remarks on what was too short
 */
export function climbsFound(trace: Trace): Climbs {
  const { grid, height } = trace;
  const times = Float64Array.from({ length: grid.n }, (_, i) => grid.start + i * grid.dt);
  const rate = localParabola(height, grid.dt, Math.max(RATE_SECONDS, 4 * grid.dt)).slope;
  const climbing: Condition = {
    words: 'climbing',
    values: rate,
    about: 'fixed',
    low: LEAST_RATE,
    high: Number.POSITIVE_INFINITY,
    slack: LEAST_RATE - ENDS_AT,
  };
  const held = trace.airspeed
    ? [within(`airspeed within ${Math.round(fromSi(SPEED_BAND, 'kt'))} kt`, trace.airspeed, SPEED_BAND, 'own median')]
    : [];
  const { stretches } = findHeld({
    times,
    conditions: [climbing, ...held],
    dwell: RATE_SECONDS,
    settle: 0,
    bridge: Number.POSITIVE_INFINITY,
    remarkFrom: Number.POSITIVE_INFINITY,
  });
  const long: Climb[] = [];
  const short: string[] = [];
  const whole = joined(stretches, trace).map(({ from, to }) => ({
    from,
    to,
    seconds: (to - from) * grid.dt,
    gain: (height[to] ?? 0) - (height[from] ?? 0),
  }));
  const highest = Math.max(0, ...whole.map((one) => one.gain));
  for (const { from, to, seconds, gain } of whole) {
    if (seconds >= LEAST_SECONDS && gain >= Math.max(LEAST_GAIN, SHARE_OF_HIGHEST * highest)) {
      const label = `climb ${long.length + 1}`;
      long.push({ from, to, label, reason: 'found: height rising without a break at one airspeed', byHand: false });
    } else if (seconds >= REMARK_SECONDS) short.push(`${Math.round(seconds)} s, ${Math.round(gain)} m`);
  }
  const kept = short.slice(0, 3).join('; ') + (short.length > 3 ? '; ...' : '');
  const flags =
    short.length > 0
      ? [
          flag(
            'excluded',
            `${short.length} ${short.length === 1 ? 'climb' : 'climbs'} left out (${kept}): under ${LEAST_SECONDS} s, under ${LEAST_GAIN} m, or not half as high as the highest. Set one by hand to have it reduced all the same`,
          ),
        ]
      : [];
  return { climbs: long.length === 1 ? long.map((one) => ({ ...one, label: 'climb' })) : long, flags };
}

function joined(stretches: readonly { from: number; to: number }[], { grid, height, airspeed }: Trace) {
  const speedOf = ({ from, to }: { from: number; to: number }) => median(airspeed?.subarray(from, to + 1) ?? [0]);
  const out: { from: number; to: number }[] = [];
  for (const one of stretches) {
    const last = out[out.length - 1];
    const apart = last ? (one.from - last.to) * grid.dt : Number.POSITIVE_INFINITY;
    const lost = last ? (height[last.to] ?? 0) - (height[one.from] ?? 0) : 0;
    const alike = last && Math.abs(speedOf(last) - speedOf(one)) <= SPEED_BAND;
    if (last && alike && apart <= BREAK_SECONDS && lost <= BREAK_LOST) last.to = one.to;
    else out.push({ ...one });
  }
  return out;
}

/**
 * Climbs a person set.
 * @param trace the recording on its grid, object
 * @param recording aligned logs, object
 * @param edits segments as edited, list
 * @returns climbs in order, with the reason of each and of what was dropped
 * @throws InputProblem when an edit names a file that is not there
 */
export function climbsSet(trace: Trace, recording: Recording, edits: readonly SegmentEdit[]): Climbs {
  const { start, dt, n } = trace.grid;
  const { segments, dropped } = placeSegments(recording, edits);
  const climbs: Climb[] = [];
  const flags = dropped.map(({ reason, ...span }) => flag('excluded', reason, span));
  for (const segment of segments) {
    const span = { fromSeconds: segment.fromSeconds, toSeconds: segment.toSeconds };
    const from = Math.max(0, Math.ceil((segment.fromSeconds - start) / dt - 1e-6));
    const to = Math.min(n - 1, Math.floor((segment.toSeconds - start) / dt + 1e-6));
    if ((to - from) * dt < LEAST_BY_HAND) {
      flags.push(flag('excluded', `a segment set by hand holds less than ${LEAST_BY_HAND} s of the log`, span));
      continue;
    }
    const label = segment.label ?? (segments.length > 1 ? `climb ${climbs.length + 1}` : 'climb');
    flags.push(flag('set-by-hand', `${label}: ${segment.reason}`, span));
    climbs.push({ from, to, label, reason: segment.reason, byHand: true });
  }
  return { climbs, flags };
}

/** The criteria in words, for the refusal and the note. */
export const CLIMB_WORDS = `height rising by ${Math.round(fromSi(LEAST_RATE, 'ft/min') / 10) * 10} ft/min or more for ${LEAST_SECONDS} s and ${LEAST_GAIN} m`;
