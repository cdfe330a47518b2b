/** Velocity over the ground, with the moments taken out when the receiver repeated itself. */
import type { Recording, Series } from '../../logs/index.ts';
import { seriesOf } from '../../logs/index.ts';
import { quantile } from '../../numbers/index.ts';
import { besideFile } from '../../segments/index.ts';

export interface GroundVelocity {
  north: Series;
  east: Series;
  /** spans in which the fix stood still, s */
  frozen: { fromSeconds: number; toSeconds: number }[];
  /** ground speed never moved at all */
  stuck: boolean;
}

/** A fix repeated this long is frozen, s; and this many times longer than repeats usually last in this log. */
const FROZEN_SECONDS = 2.5;
const USUAL_REPEATS = 4;

/**
 * Velocity over the ground from speed and true track, as components so that they can be averaged.
 * @param recording the aligned logs
 * @returns components on the receiver's times, and when it was frozen; undefined when speed or track is missing
 */
export function groundVelocity(recording: Recording): GroundVelocity | undefined {
  const speed = seriesOf(recording, 'ground-speed');
  const track = speed && besideFile(recording, speed.file, ['track-true']);
  if (!speed || !track) return undefined;
  const sameClock = track.t === speed.t;
  const direction = sameClock ? track.v : matched(track, speed.t);
  const position = ['latitude', 'longitude'].map((name) =>
    recording.series.find((one) => one.quantity === name && one.t === speed.t),
  );
  const frozen = frozenSpans(speed, direction, position);
  const isFrozen = (t: number) => frozen.some((span) => t >= span.fromSeconds && t <= span.toSeconds);
  const component = (part: (angle: number) => number): Series => ({
    ...speed,
    quantity: 'ground-velocity',
    v: Float64Array.from(speed.v, (v, i) =>
      isFrozen(speed.t[i] ?? 0) ? Number.NaN : v * part(direction[i] ?? Number.NaN),
    ),
  });
  return { north: component(Math.cos), east: component(Math.sin), frozen, stuck: standsStill(speed.v) };
}

// Same receiver, but a table of its own: nearest sample within the hold.
function matched(track: Series, times: Float64Array): Float64Array {
  let j = 0;
  return times.map((time) => {
    while (j + 1 < track.t.length && Math.abs((track.t[j + 1] ?? 0) - time) <= Math.abs((track.t[j] ?? 0) - time))
      j += 1;
    return Math.abs((track.t[j] ?? 0) - time) <= track.holdSeconds ? (track.v[j] ?? Number.NaN) : Number.NaN;
  });
}

function standsStill(v: Float64Array): boolean {
  const valid = v.filter((value) => !Number.isNaN(value));
  return valid.length > 30 && valid.every((value) => value === valid[0]);
}

// A receiver that lost its fix may repeat everything it last said. With positions logged that is certain: the airplane
// moves. Without, a repeat counts only when it lasts far longer than repeats do in this log.
function frozenSpans(
  speed: Series,
  direction: ArrayLike<number>,
  position: readonly (Series | undefined)[],
): GroundVelocity['frozen'] {
  const said = [speed.v, direction, ...position.flatMap((one) => (one ? [one.v] : []))];
  const runs: { from: number; to: number }[] = [];
  for (let i = 1; i < speed.v.length; i += 1) {
    if (!((speed.v[i] ?? Number.NaN) > 5)) continue;
    if (!said.every((values) => values[i] === values[i - 1])) continue;
    const last = runs[runs.length - 1];
    if (last?.to === i - 1) last.to = i;
    else runs.push({ from: i - 1, to: i });
  }
  const lasts = runs.map(({ from, to }) => (speed.t[to] ?? 0) - (speed.t[from] ?? 0));
  const positions = position.every((one) => one !== undefined);
  const limit = positions ? FROZEN_SECONDS : Math.max(FROZEN_SECONDS, USUAL_REPEATS * (quantile(lasts, 0.9) || 0));
  return runs
    .filter((_, k) => (lasts[k] ?? 0) >= limit)
    .map(({ from, to }) => ({ fromSeconds: speed.t[from] ?? 0, toSeconds: speed.t[to] ?? 0 }));
}
