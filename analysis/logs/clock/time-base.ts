/** One time base from whatever clock a file has: never falling, with what was done to it. */
import { type Flag, flag, type Problem, problem } from '../../remarks/index.ts';
import type { LogMap } from '../log-map.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { TimeBase, TimeSegment } from '../table.ts';
import { believedRun, type Cut, cutRuns } from './cut-runs.ts';
import { pickClock } from './pick-clock.ts';
import { rateRemarks } from './rate-remarks.ts';
import type { RawClock, TimeColumn } from './raw-clock.ts';
import { type Rate, rowRate, spreadRows, usualStep } from './row-rate.ts';

export type { TimeColumn } from './raw-clock.ts';

export interface TimeBuilt {
  /** null where nothing tells the time */
  time: TimeBase | null;
  /** first record as the file's own clock shows it, where no zone tells more */
  clockStart?: string;
  /** what was read and done, in words */
  notes: string[];
  flags: Flag[];
  questions: ReadQuestion[];
  /** indices of the columns the time was made of */
  used: number[];
  problems: Problem[];
}

/**
 * Build the time base of a file.
 * @param rows rows of the file, count
 * @param columns columns that may tell time
 * @param options what a person confirmed; rate of a file without time, 1/s; rows before which the header stood again
 * @returns the time base with notes, remarks and questions, or the problem that there is none
 */
export function buildTimeBase(
  rows: number,
  columns: readonly TimeColumn[],
  options: { map?: LogMap['time']; sampleRateHz?: number; breaks: readonly number[] },
): TimeBuilt {
  const clock = rows > 0 ? pickClock(columns, options.map) : null;
  const held = clock ? holdStamps(clock, rows) : null;
  const rate = held ? rowRate(held.stamps) : { step: Number.NaN, row: Number.NaN };
  if (!clock || !held || (Number.isNaN(rate.step) && rows > 1)) return withoutClock(rows, options.sampleRateHz);
  const { kind, offsetMinutes, used } = clock;
  const built: TimeBuilt = {
    time: null,
    notes: clock.notes,
    flags: clock.flags,
    questions: clock.questions,
    used,
    problems: [],
  };
  if (held.missing > 0) {
    const rowsWithout = held.missing === 1 ? '1 row has no time' : `${held.missing} rows have no time`;
    const message = `${rowsWithout} and would carry the one before; placed between the neighbours`;
    built.flags.push(flag('duplicate-timestamps', message));
  }
  const cut = cutRuns(clock, held.stamps, rate, options.breaks);
  const seconds = placeRuns(held.stamps, cut, rate);
  if (held.repeated > 0) {
    const message = `${held.repeated} rows repeat the time before; they were spread by ${Number((1 / rate.row).toPrecision(4))} rows a second`;
    built.flags.push(flag('duplicate-timestamps', message));
  }
  remarkRuns(built, cut, seconds);
  const starts = new Set(cut.runs.slice(1).map((run) => run.from));
  built.flags.push(...rateRemarks(seconds, starts));
  const believed = believedRun(clock, held.stamps, cut.runs);
  const dated = kind === 'absolute' && !Number.isNaN(offsetMinutes) && built.questions.length === 0 && believed;
  // The first stamp of a run may have been met in its middle; the last one was not.
  const startMs = dated
    ? Math.round((placedStamp(held.stamps, believed, rate) - (seconds[believed.from] ?? 0)) * 1000)
    : Number.NaN;
  const shown = Number.isNaN(offsetMinutes) ? clockText(kind, held.stamps[0] ?? Number.NaN) : null;
  if (shown !== null && built.questions.length === 0) built.clockStart = shown;
  const startUtcMs = Math.abs(startMs) < LAST_DATE_MS ? startMs : null;
  built.time = {
    ...baseOf(seconds),
    startUtcMs,
    start: startUtcMs === null ? null : isoOf(startUtcMs, offsetMinutes),
    zone: Number.isNaN(offsetMinutes) ? 'unknown' : zoneOf(offsetMinutes),
    segments: segmentsOf(cut, seconds),
  };
  return built;
}

/** The last moment a date can name (ECMA-262, time values; from memory), ms. */
const LAST_DATE_MS = 8.64e15;

function withoutClock(rows: number, sampleRateHz: number | undefined): TimeBuilt {
  const built: TimeBuilt = { time: null, notes: [], flags: [], questions: [], used: [], problems: [] };
  if (sampleRateHz === undefined || !(sampleRateHz > 0)) {
    built.problems.push(problem('no-time', 'No column of the file tells the time of a row.'));
    return built;
  }
  const seconds = Float64Array.from({ length: rows }, (_, i) => i / sampleRateHz);
  const toSeconds = seconds[rows - 1] ?? 0;
  built.notes.push(`the file tells no time; ${sampleRateHz} rows a second as given`);
  const segments = [{ fromSeconds: 0, toSeconds, reason: 'start of the file' }];
  built.time = { ...baseOf(seconds), sampleRateHz, startUtcMs: null, start: null, zone: 'unknown', segments };
  return built;
}

/** Stamps with each hole holding the stamp before: what stands equal is spread later, holes with it. */
function holdStamps(clock: RawClock, rows: number): { stamps: Float64Array; missing: number; repeated: number } | null {
  // The clock's own numbers are not wanted any more.
  const stamps = clock.raw;
  const first = clock.raw.findIndex((value) => Number.isFinite(value));
  if (first < 0) return null;
  let missing = 0;
  let repeated = 0;
  let before = clock.raw[first] ?? 0;
  for (let i = 0; i < rows; i += 1) {
    const value = clock.raw[i] ?? Number.NaN;
    if (!Number.isFinite(value)) missing += 1;
    else {
      if (i > first && value === before) repeated += 1;
      before = value;
    }
    stamps[i] = before;
  }
  return { stamps, missing, repeated };
}

function placeRuns(stamps: Float64Array, { runs }: Cut, rate: Rate): Float64Array {
  const seconds = new Float64Array(stamps.length);
  let lastEnd = 0;
  let lastStamp = 0;
  for (const run of runs) {
    // Each run by its own rate: the recorder may come back with another one.
    const own = runs.length === 1 ? rate : rowRate(stamps.subarray(run.from, run.to));
    spreadRows(stamps, run.from, run.to, Number.isNaN(own.row) ? rate : own, seconds);
    const first = seconds[run.from] ?? 0;
    const row = Number.isNaN(rate.row) ? 0 : rate.row;
    let begin = 0;
    if (run.from > 0) begin = lastEnd + (run.paused ? Math.max(first - lastStamp, 0) : row);
    lastStamp = seconds[run.to - 1] ?? first;
    const shift = begin - first;
    for (let i = run.from; i < run.to; i += 1) seconds[i] = tidy((seconds[i] ?? 0) + shift);
    lastEnd = seconds[run.to - 1] ?? begin;
  }
  for (let i = 1; i < seconds.length; i += 1)
    if ((seconds[i] ?? 0) < (seconds[i - 1] ?? 0)) seconds[i] = seconds[i - 1] ?? 0;
  return seconds;
}

/** To a microsecond: epoch seconds in a double are hardly finer. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;

function placedStamp(stamps: Float64Array, run: { from: number; to: number }, rate: Rate): number {
  const whole = run.from === 0 && run.to === stamps.length;
  const own = whole ? rate : rowRate(stamps.subarray(run.from, run.to));
  const first = stamps.subarray(run.from, Math.min(run.to, run.from + ROWS_FOR_FIRST));
  const placed = new Float64Array(first.length);
  spreadRows(first, 0, first.length, Number.isNaN(own.row) ? rate : own, placed);
  return placed[0] ?? 0;
}

/** Where the first row of a run stands within its stamp shows in its first rows. */
const ROWS_FOR_FIRST = 10_000;

function remarkRuns(built: TimeBuilt, { runs, midnights, wild }: Cut, seconds: Float64Array): void {
  for (const row of wild.slice(0, 100)) {
    const where = { fromSeconds: seconds[row] ?? 0, toSeconds: seconds[row] ?? 0 };
    built.flags.push(flag('clock-jump', 'a single stamp stood out of order; it was placed by its neighbours', where));
  }
  for (const row of midnights.slice(0, 100))
    built.flags.push(flag('midnight', 'the clock passed midnight', span(seconds, row)));
  for (const run of runs.slice(1, 101)) {
    const where = span(seconds, run.from);
    if (run.reason === 'clock-jump') {
      built.flags.push(flag('clock-jump', `${run.did}; rows follow each other by their own rate`, where));
      continue;
    }
    if (run.reason === 'elapsed-reset')
      built.flags.push(flag('elapsed-reset', 'the elapsed time started again', where));
    const pause = run.paused ? '' : '; the file does not tell for how long';
    built.flags.push(flag('power-cycle', `the recorder was switched off and on${pause}`, where));
  }
}

const span = (seconds: Float64Array, row: number) => ({
  fromSeconds: seconds[row - 1] ?? 0,
  toSeconds: seconds[row] ?? 0,
});

function segmentsOf({ runs }: Cut, seconds: Float64Array): TimeSegment[] {
  const reasons = {
    start: 'start of the file',
    'power-cycle': 'power cycle',
    'elapsed-reset': 'power cycle: elapsed time started again',
    'clock-jump': 'clock was set',
  };
  return runs.map((run) => ({
    fromSeconds: seconds[run.from] ?? 0,
    toSeconds: seconds[run.to - 1] ?? 0,
    reason: reasons[run.reason],
  }));
}

function baseOf(seconds: Float64Array) {
  const step = usualStep(seconds);
  return {
    seconds,
    durationSeconds: seconds[seconds.length - 1] ?? 0,
    sampleRateHz: step > 0 ? Number((1 / step).toPrecision(9)) : 0,
  };
}

function zoneOf(minutes: number): string {
  if (minutes === 0) return 'UTC';
  const size = Math.abs(minutes);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** `2031-05-04 10:00:00`, or `10:00:00` where there is no date; null where the clock counts from some start. */
function clockText(kind: RawClock['kind'], seconds: number): string | null {
  if (kind === 'elapsed' || !(Math.abs(seconds) < LAST_DATE_MS / 1000)) return null;
  const text = new Date(Math.floor(seconds) * 1000).toISOString().replace('T', ' ').slice(0, 19);
  return kind === 'absolute' ? text : text.slice(11);
}

function isoOf(utcMs: number, offsetMinutes: number): string {
  const local = new Date(utcMs + offsetMinutes * 60_000).toISOString().replace('.000Z', '').replace('Z', '');
  return `${local}${offsetMinutes === 0 ? 'Z' : zoneOf(offsetMinutes)}`;
}
