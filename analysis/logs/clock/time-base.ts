/** One time base from whatever clock a file carries: monotone seconds from the first record, with what was done to it. */
import { type Flag, flag, type Problem, problem } from '../../remarks/index.ts';
import type { LogMap } from '../log-map.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { TimeBase, TimeSegment } from '../table.ts';
import { readStamps } from './stamps.ts';

export interface TimeColumn {
  column: string;
  index: number;
  name: string;
  unitText: string;
  texts: readonly string[] | null;
  numbers: Float64Array | null;
}

export interface TimeOptions {
  map?: LogMap['time'];
  /** for a file without a clock, 1/s */
  sampleRateHz?: number;
  /** rows before which a repeated header stood */
  breaks: readonly number[];
}

export interface TimeBuilt {
  time: TimeBase | null;
  notes: string[];
  flags: Flag[];
  questions: ReadQuestion[];
  /** indices of the columns that became the clock */
  used: number[];
  problems: Problem[];
}

/** A step longer than this many periods is a gap. */
const GAP_PERIODS = 3;
/** A step back, or a forward one longer than this, may be the clock being set, s. */
const CLOCK_SET = 12 * 3600;

/**
 * Build the time base.
 * @param rows how many rows the file has, count
 * @param columns those that speak of time
 * @param options what a person confirmed, a rate, repeated headers
 * @returns the base, or the problem why there is none
 */
export function buildTimeBase(rows: number, columns: readonly TimeColumn[], options: TimeOptions): TimeBuilt {
  const built: TimeBuilt = { time: null, notes: [], flags: [], questions: [], used: [], problems: [] };
  const stamps = readStamps(rows, columns, options.map, built);
  if (!stamps) {
    if (!options.sampleRateHz) {
      built.problems.push(problem('no-time', 'No column tells the time of a row.'));
      return built;
    }
    const rate = options.sampleRateHz;
    built.notes.push(`rows are ${1 / rate} s apart, as stated by hand`);
    const seconds = Float64Array.from({ length: rows }, (_, i) => i / rate);
    built.time = baseOf(seconds, null, 'unknown', [
      { fromSeconds: 0, toSeconds: seconds.at(-1) ?? 0, reason: 'rate stated by hand' },
    ]);
    return built;
  }
  const raw = fillMissing(stamps.seconds, built);
  const period = usualStep(raw);
  const spread = spreadDuplicates(raw, built);
  const placed = makeMonotone(spread, period, stamps.kind === 'elapsed', options.breaks, built);
  flagGapsAndRates(placed.seconds, placed.starts, built);
  const datedAt = placed.clockSetAt;
  let startUtcMs: number | null = null;
  if (stamps.epochMs !== null && stamps.zoneMinutes !== null) {
    const anchor = Math.min(datedAt, placed.seconds.length - 1);
    const anchorMs = stamps.epochMs + 1000 * (spread[anchor] ?? 0) - 60_000 * stamps.zoneMinutes;
    startUtcMs = anchorMs - 1000 * (placed.seconds[anchor] ?? 0);
  }
  if (stamps.kind === 'clock' && stamps.epochMs === null)
    built.flags.push(flag('no-date', 'the file has a time of day but no date'));
  if (stamps.kind === 'clock' && stamps.zoneMinutes === null)
    built.flags.push(flag('zone-unknown', 'the file does not say its zone'));
  const zone =
    stamps.zoneMinutes === null
      ? 'unknown'
      : stamps.zoneMinutes === 0 && stamps.isUtc
        ? 'UTC'
        : offsetText(stamps.zoneMinutes);
  built.time = {
    ...baseOf(placed.seconds, startUtcMs, zone, placed.segments),
    start: startUtcMs === null ? null : isoWithOffset(startUtcMs, stamps.zoneMinutes ?? 0, stamps.isUtc),
  };
  return built;
}

function baseOf(seconds: Float64Array, startUtcMs: number | null, zone: string, segments: TimeSegment[]): TimeBase {
  const step = usualStep(seconds);
  return {
    seconds,
    startUtcMs,
    start: null,
    zone,
    durationSeconds: round6(seconds.at(-1) ?? 0),
    sampleRateHz: step > 0 ? Number((1 / step).toPrecision(6)) : 0,
    segments,
  };
}

const round6 = (value: number) => Math.round(value * 1e6) / 1e6;

// Median of the steps forward, from a sample of the file.
function usualStep(seconds: Float64Array): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(seconds.length / 20_000));
  for (let i = 1; i < seconds.length; i += stride) {
    const step = (seconds[i] ?? 0) - (seconds[i - 1] ?? 0);
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 1;
}

function fillMissing(seconds: Float64Array, built: TimeBuilt): Float64Array {
  const out = seconds.slice();
  let filled = 0;
  for (let i = 0; i < out.length; i++) {
    if (!Number.isNaN(out[i])) continue;
    let j = i;
    while (j < out.length && Number.isNaN(out[j])) j++;
    const before = out[i - 1];
    const after = out[j];
    for (let k = i; k < j; k++) {
      const share = (k - i + 1) / (j - i + 1);
      out[k] = before !== undefined && after !== undefined ? before + share * (after - before) : (before ?? after ?? 0);
      filled += 1;
    }
    i = j;
  }
  if (filled > 0) built.notes.push(`${filled} rows without a time were placed between their neighbours`);
  return out;
}

// A recorder faster than its stamps writes one stamp several times: spread the run evenly up to the next stamp.
function spreadDuplicates(seconds: Float64Array, built: TimeBuilt): Float64Array {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i < seconds.length; ) {
    let j = i + 1;
    while (j < seconds.length && seconds[j] === seconds[i]) j++;
    runs.push({ from: i, to: j });
    i = j;
  }
  if (runs.length === seconds.length) return seconds;
  const out = seconds.slice();
  const lengths = runs.map((run) => run.to - run.from).sort((a, b) => a - b);
  const usual = lengths[Math.floor(lengths.length / 2)] ?? 1;
  const step = usualStep(seconds);
  let count = 0;
  runs.forEach(({ from, to }, r) => {
    const length = to - from;
    // The first and last run may be cut by the ends of the file: they go by the usual count.
    const per = Math.max(length, usual);
    const lead = r === 0 && length < usual ? usual - length : 0;
    for (let k = from; k < to; k++) out[k] = (seconds[from] ?? 0) + ((k - from + lead) * step) / per;
    if (length > 1) count += length;
  });
  if (usual > 1 || count > 0)
    built.flags.push(
      flag('duplicate-timestamps', `${count} rows share a stamp with others; they were spread evenly between stamps`),
    );
  return out;
}

interface Placed {
  seconds: Float64Array;
  segments: TimeSegment[];
  starts: number[];
  /** first row whose clock is the one the file ends with */
  clockSetAt: number;
}

function makeMonotone(
  seconds: Float64Array,
  period: number,
  elapsed: boolean,
  breaks: readonly number[],
  built: TimeBuilt,
): Placed {
  const out = new Float64Array(seconds.length);
  const starts: number[] = [0];
  const reasons = ['first record'];
  const broken = new Set(breaks);
  let shift = -(seconds[0] ?? 0);
  let clockSetAt = 0;
  for (let i = 1; i < seconds.length; i++) {
    const now = seconds[i] ?? 0;
    const step = now - (seconds[i - 1] ?? 0);
    const last = out[i - 1] ?? 0;
    if (step < 0) {
      if (elapsed) {
        built.flags.push(
          flag('elapsed-reset', `the elapsed time starts again in row ${i + 1}`, { fromSeconds: round6(last) }),
        );
        built.flags.push(
          flag('power-cycle', 'the recorder was switched off and on; the time between is not known', {
            fromSeconds: round6(last),
          }),
        );
        shift = last + period - now;
        starts.push(i);
        reasons.push('elapsed time started again');
      } else {
        built.flags.push(
          flag('clock-jump', `the clock steps back ${Math.round(-step)} s in row ${i + 1}`, {
            fromSeconds: round6(last),
          }),
        );
        shift = last + period - now;
        clockSetAt = i;
        starts.push(i);
        reasons.push('clock set back');
      }
    } else if (step > CLOCK_SET && i < seconds.length - 1) {
      built.flags.push(
        flag('clock-jump', `the clock steps forward ${Math.round(step)} s in row ${i + 1}`, {
          fromSeconds: round6(last),
        }),
      );
      shift = last + period - now;
      clockSetAt = i;
      starts.push(i);
      reasons.push('clock set forward');
    } else if (broken.has(i)) {
      built.flags.push(
        flag('power-cycle', `the header stands again before row ${i + 1}`, { fromSeconds: round6(last) }),
      );
      starts.push(i);
      reasons.push('header repeated');
    }
    out[i] = Math.max(last, now + shift);
  }
  const segments = starts.map((from, k) => ({
    fromSeconds: round6(out[from] ?? 0),
    toSeconds: round6(out[(starts[k + 1] ?? out.length) - 1] ?? 0),
    reason: reasons[k] ?? '',
  }));
  return { seconds: out, segments, starts, clockSetAt };
}

function flagGapsAndRates(seconds: Float64Array, starts: readonly number[], built: TimeBuilt): void {
  const period = usualStep(seconds);
  const begins = new Set(starts);
  let gaps = 0;
  for (let i = 1; i < seconds.length; i++) {
    const step = (seconds[i] ?? 0) - (seconds[i - 1] ?? 0);
    if (step <= GAP_PERIODS * period || begins.has(i)) continue;
    gaps += 1;
    if (gaps <= 20) {
      built.flags.push(
        flag('gap', `${round6(step)} s without a row`, {
          fromSeconds: round6(seconds[i - 1] ?? 0),
          toSeconds: round6(seconds[i] ?? 0),
        }),
      );
    }
  }
  if (gaps > 20) built.flags.push(flag('gap', `${gaps} gaps in all`));
  const third = Math.floor(seconds.length / 3);
  if (third < 30) return;
  const first = usualStep(seconds.subarray(0, third));
  const last = usualStep(seconds.subarray(2 * third));
  if (first / last > 1.5 || last / first > 1.5) {
    built.flags.push(
      flag('rate-change', `the rows stand ${round6(first)} s apart at first and ${round6(last)} s at the end`),
    );
  }
}

function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${String(Math.floor(size / 60)).padStart(2, '0')}:${String(size % 60).padStart(2, '0')}`;
}

function isoWithOffset(utcMs: number, minutes: number, isUtc: boolean): string {
  const local = new Date(Math.round(utcMs) + 60_000 * minutes).toISOString();
  const clock = local
    .replace(/\.000Z$/, '')
    .replace(/Z$/, '')
    .replace(/(\.\d+?)0+$/, '$1');
  return `${clock}${minutes === 0 && isUtc ? 'Z' : offsetText(minutes)}`;
}
