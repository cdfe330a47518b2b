/** One long climb cut into slabs of height: rate against density altitude in a single go. */
import type { AirData, ClimbSamples, RunFacts } from './measure-run.ts';
import { measureRun } from './measure-run.ts';
import type { ClimbRun } from './run.ts';

/** a climb that gains more than this is shown in slabs of about `SLAB` metres */
export const LONG_CLIMB = 600;
const SLAB = 300;

/**
 * The slabs of a long climb.
 * @param samples of the whole climb, SI
 * @param run the climb as one run
 * @param air how the channels are to be read
 * @param facts what else is known of it
 * @returns one run a slab, lowest first; none for a short climb
 * @throws OutOfRange when a value lies outside the relations of air data
 */
export function slabsOf(samples: ClimbSamples, run: ClimbRun, air: AirData, facts: RunFacts): ClimbRun[] {
  if (run.gained < LONG_CLIMB) return [];
  const count = Math.floor(run.gained / SLAB);
  const step = (run.toSeconds - run.fromSeconds) / count;
  const slabs: ClimbRun[] = [];
  for (let k = 0; k < count; k += 1) {
    const from = run.fromSeconds + k * step;
    const part = between(samples, from, from + step);
    const slab = measureRun(part, air, { ...facts, label: `${facts.label}, slab ${k + 1}`, flags: [] });
    if (slab) slabs.push(slab);
  }
  return slabs;
}

/**
 * The samples inside a time span.
 * @param samples of a longer stretch
 * @param from first second, s
 * @param to last second, s
 * @returns the samples from `from` to `to`
 */
export function between(samples: ClimbSamples, from: number, to: number): ClimbSamples {
  const start = samples.t.findIndex((time) => time >= from);
  const after = samples.t.findIndex((time) => time > to);
  const cut = (channel: Float64Array) =>
    channel.slice(start < 0 ? channel.length : start, after < 0 ? undefined : after);
  return {
    t: cut(samples.t),
    Hp: cut(samples.Hp),
    ias: cut(samples.ias),
    airTemperature: cut(samples.airTemperature),
    hold: samples.hold,
  };
}
