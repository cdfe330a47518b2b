/** Where the clock was set, fell back or was switched off: stretches in which it ran, each true in itself. */
import { DAY_SECONDS, type RawClock } from './raw-clock.ts';
import type { Rate } from './row-rate.ts';

export type CutReason = 'start' | 'power-cycle' | 'elapsed-reset' | 'clock-jump';

export interface Run {
  /** first row, from 0 */
  from: number;
  /** row after the last */
  to: number;
  reason: CutReason;
  /** the clock tells how long the pause before it was */
  paused: boolean;
  /** what the clock did, text */
  did: string;
}

export interface Cut {
  runs: Run[];
  /** rows at which a midnight was passed */
  midnights: number[];
  /** rows whose single stamps were wild */
  wild: number[];
}

// 2010-01-01, s since 1970: recorders that count from before it have not been set (common practice, no source).
const SET_SINCE = 1_262_304_000;
const NEAR_MIDNIGHT = 300;
const MONTH = 30 * DAY_SECONDS;

/**
 * Cut the clock into runs. The stamps are mended in place: days counted on, single wild stamps held.
 * @param clock the file's clock
 * @param held its stamps without holes, s
 * @param rate usual step between stamps
 * @param breaks rows before which the header stood again
 * @returns runs and what was met
 */
export function cutRuns(clock: RawClock, held: Float64Array, rate: Rate, breaks: readonly number[]): Cut {
  const cut: Cut = {
    runs: [{ from: 0, to: held.length, reason: 'start', paused: false, did: '' }],
    midnights: [],
    wild: [],
  };
  const broken = new Set(breaks);
  const shift = Number.isNaN(clock.offsetMinutes) ? 0 : clock.offsetMinutes * 60;
  const near = Math.max(NEAR_MIDNIGHT, 5 * rate.step);
  let carry = 0;
  let before = held[0] ?? 0;
  let nextDay = (day(before + shift) + 1) * DAY_SECONDS - shift;
  for (let i = 1; i < held.length; i += 1) {
    let now = (held[i] ?? 0) + carry;
    let step = now - before;
    // The clock just ran on: what nearly every row shows.
    if (step > 0 && step < 600 && now < nextDay && (broken.size === 0 || !broken.has(i))) {
      held[i] = now;
      before = now;
      continue;
    }
    if (
      clock.wall &&
      Math.abs(step) > DAY_SECONDS / 2 &&
      (clock.kind === 'day' || carry !== 0 || nearDay(step, near))
    ) {
      const days = -Math.round((step - rate.step) / DAY_SECONDS);
      const bridged = step + days * DAY_SECONDS;
      if (
        days !== 0 &&
        Math.abs(days) <= 1 &&
        bridged >= 0 &&
        bridged < (clock.kind === 'day' ? DAY_SECONDS / 2 : near)
      ) {
        carry += days * DAY_SECONDS;
        now += days * DAY_SECONDS;
        step = bridged;
      }
    }
    held[i] = now;
    if (step === 0 && !broken.has(i)) continue;
    if (clock.wall && step > 0 && step < DAY_SECONDS && day(now + shift) > day(before + shift)) cut.midnights.push(i);
    const odd = step < 0 || step > DAY_SECONDS;
    if (odd && !broken.has(i)) {
      const after = (held[i + 1] ?? Number.NaN) + carry - before;
      if ((step < 0 && step >= -2 * rate.step && after >= 0) || (after >= 0 && after <= 5 * rate.step)) {
        held[i] = before;
        cut.wild.push(i);
        continue;
      }
    }
    const reason = reasonAt(clock, held, cut, i, step, broken.has(i), shift);
    if (reason) {
      const last = cut.runs[cut.runs.length - 1];
      if (last) last.to = i;
      const paused = step >= 0 && reason === 'power-cycle';
      const did = `the clock went ${step < 0 ? 'back' : 'forward'} by ${Math.round(Math.abs(step) * 10) / 10} s`;
      cut.runs.push({ from: i, to: held.length, reason, paused, did });
    }
    before = now;
    nextDay = (day(now + shift) + 1) * DAY_SECONDS - shift;
  }
  return cut;
}

const day = (seconds: number): number => Math.floor(seconds / DAY_SECONDS);
const nearDay = (step: number, near: number): boolean => Math.abs(Math.abs(step) - DAY_SECONDS) < near;

function reasonAt(
  clock: RawClock,
  held: Float64Array,
  cut: Cut,
  i: number,
  step: number,
  broken: boolean,
  shift: number,
): CutReason | null {
  const from = cut.runs[cut.runs.length - 1]?.from ?? 0;
  const first = held[from] ?? 0;
  const before = held[i - 1] ?? 0;
  if (clock.kind === 'elapsed') {
    if (step < 0) return broken || before + step <= Math.max(60, 0.1 * before) ? 'elapsed-reset' : 'clock-jump';
    return broken ? 'power-cycle' : null;
  }
  if (step < 0) return 'clock-jump';
  if (clock.kind === 'absolute') {
    if (before < SET_SINCE && before + step >= SET_SINCE && step > DAY_SECONDS) return 'clock-jump';
    if (step > MONTH && !broken) return 'clock-jump';
  }
  // A clock that starts at midnight sharp and soon leaps had not been set.
  const sinceMidnight = first + shift - day(first + shift) * DAY_SECONDS;
  if (from === 0 && sinceMidnight < 5 && step > 600 && i < held.length / 2) return 'clock-jump';
  return broken ? 'power-cycle' : null;
}

/**
 * The run whose clock is believed for the date: the longest that had been set.
 * @param clock the file's clock
 * @param held stamps, s
 * @param runs the runs
 * @returns the run, or undefined where there is none
 */
export function believedRun(clock: RawClock, held: Float64Array, runs: readonly Run[]): Run | undefined {
  const set = runs.filter((run) => clock.kind !== 'absolute' || (held[run.from] ?? 0) >= SET_SINCE);
  return (set.length > 0 ? set : runs).reduce<Run | undefined>(
    (best, run) => (!best || run.to - run.from > best.to - best.from ? run : best),
    undefined,
  );
}
