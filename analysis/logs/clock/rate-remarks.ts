/** Pauses and changes of rate in a finished time base. */
import { median } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';

const LOOK = 8;
const MOST = 100;

/**
 * Find gaps (a step over three usual ones) and lasting changes of the rate.
 * @param seconds times, s, never falling
 * @param starts rows at which a run begins, where a pause is told otherwise
 * @returns flags, the first hundred of each kind
 */
export function rateRemarks(seconds: Float64Array, starts: ReadonlySet<number>): Flag[] {
  const flags: Flag[] = [];
  const counts = { gap: 0, rate: 0 };
  let usual = usualStep(seconds, 1);
  for (let i = 1; i < seconds.length; i += 1) {
    const before = seconds[i - 1] ?? 0;
    const now = seconds[i] ?? 0;
    const step = now - before;
    if ((step <= 1.3 * usual && step >= usual / 1.3) || starts.has(i)) continue;
    const fresh = usualStep(seconds, i);
    const steady = fresh > 0 && steadyAt(seconds, i, fresh);
    if (step > 3 * usual && !(steady && step < 3 * fresh)) {
      counts.gap += 1;
      if (counts.gap <= MOST)
        flags.push(flag('gap', `rows are missing for ${round(step)} s`, { fromSeconds: before, toSeconds: now }));
    }
    if (steady && (fresh > 1.3 * usual || fresh < usual / 1.3)) {
      counts.rate += 1;
      const message = `the rate changed from ${round(1 / usual)} to ${round(1 / fresh)} rows a second`;
      if (counts.rate <= MOST) flags.push(flag('rate-change', message, { fromSeconds: before, toSeconds: now }));
      usual = fresh;
    }
  }
  if (counts.gap > MOST) flags.push(flag('gap', `${counts.gap} gaps in all; the first ${MOST} are listed`));
  return flags;
}

const round = (value: number): number => Number(value.toPrecision(4));

function usualStep(seconds: Float64Array, from: number): number {
  const steps: number[] = [];
  const count = from === 1 ? 301 : LOOK;
  for (let i = from; i < Math.min(seconds.length, from + count); i += 1)
    steps.push((seconds[i] ?? 0) - (seconds[i - 1] ?? 0));
  if (from > 1) return steps.length < LOOK ? Number.NaN : median(steps);
  const first = median(steps.slice(0, LOOK));
  const steady = first > 0 && steadyAt(seconds, 1, first);
  return steady ? first : median(steps);
}

function steadyAt(seconds: Float64Array, from: number, step: number): boolean {
  let like = 0;
  for (let i = from; i < from + LOOK; i += 1) {
    const one = (seconds[i] ?? Number.NaN) - (seconds[i - 1] ?? 0);
    if (Math.abs(one - step) <= 0.2 * step) like += 1;
  }
  return like >= LOOK - 1;
}
