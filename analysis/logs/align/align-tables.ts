/** Several logs on the first one's clock: by a signal they share, by hand, by their clocks, or by asking. */
import { toSi } from '../../units/index.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { LogTable } from '../table.ts';
import { type FoundShift, findShift } from './find-shift.ts';
import type { LogAlignment } from './log-alignment.ts';
import { type SharedSignal, sharedSignals } from './shared-signal.ts';

const FINEST_STEP = 0.5;
const COARSEST_STEP = 1;
/** Two set clocks are searched this far apart, s. */
const CLOCK_REACH = 3600;
const LEAST_PEAK = 0.6;
const LEAST_LEAD = 0.1;
/** A signal that hardly changed, level flight's altitude say, must stand out more and its parts agree, s. */
const QUIET_LEAD = 0.3;
const QUIET_BLOCKS = 5;
const QUIET_U95 = 2;
/** What a clock kept by satellites, or a shift read off two displays, is taken to be good for (common practice), s. */
const CLOCK_U95 = 1;
const HOUR = toSi(1, 'h');

export interface AlignedTables {
  /** seconds to add to each table's own time, in the order of the tables; 0 for the first */
  shifts: number[];
  /** seconds more to add for each second of its own time, in the order of the tables */
  drifts: number[];
  /** one a table after the first that could be aligned */
  alignment: LogAlignment[];
  questions: ReadQuestion[];
}

/**
 * Puts logs on the clock of the first.
 * @param tables the logs, values SI; the first one sets the clock
 * @param byHand shifts set by a person, s, by file name; they override everything
 * @returns shifts, how each was found, and a question for each that could not be settled
 */
export function alignTables(tables: readonly LogTable[], byHand: Record<string, number> = {}): AlignedTables {
  const [first, ...others] = tables;
  const zero = first ? [0] : [];
  const out: AlignedTables = { shifts: [...zero], drifts: [...zero], alignment: [], questions: [] };
  if (!first) return out;
  for (const table of others) {
    const { shift, alignment, question } = alignOne(first, table, byHand);
    out.shifts.push(shift);
    out.drifts.push((alignment?.driftSecondsPerHour ?? 0) / HOUR);
    if (alignment) out.alignment.push(alignment);
    if (question) out.questions.push(question);
  }
  return out;
}

interface One {
  shift: number;
  alignment?: LogAlignment;
  question?: ReadQuestion;
}

function alignOne(first: LogTable, table: LogTable, byHand: Record<string, number>): One {
  const hand = Object.hasOwn(byHand, table.file) ? byHand[table.file] : undefined;
  if (hand !== undefined) return settled(table, hand, 'set by hand');
  const clock = clockDifference(first, table);
  const step = Math.min(COARSEST_STEP, Math.max(FINEST_STEP, period(first), period(table)));
  const signals = sharedSignals(first, table, step);
  const doubts: string[] = [];
  let best: LogAlignment | undefined;
  for (const signal of signals) {
    const found = bestShift(signal, step, clock);
    const doubt = whyNot(signal, found);
    if (!found || doubt !== null) {
      doubts.push(`${signal.by}: ${doubt}`);
    } else if (!best || found.u95 < best.u95) {
      const { shiftSeconds, u95, drift, peak, secondPeak } = found;
      const parting = drift ? { driftSecondsPerHour: drift.perSecond * HOUR, driftU95: drift.u95 * HOUR } : {};
      best = { file: table.file, shiftSeconds, ...parting, u95, by: signal.by, peak, secondPeak };
    }
  }
  if (best) return { shift: best.shiftSeconds, alignment: best };
  if (signals.length === 0 && clock !== null && isUtc(first) && isUtc(table)) return settled(table, clock, 'clock');
  return { shift: clock ?? 0, question: shiftQuestion(first, table, doubts, clock) };
}

/** About the clocks first, where both are set; over every overlap when nothing fits there. */
function bestShift(signal: SharedSignal, step: number, clock: number | null): FoundShift | undefined {
  if (clock !== null) {
    const near = findShift(signal.a, signal.b, step, [clock - CLOCK_REACH, clock + CLOCK_REACH]);
    if (near && whyNot(signal, near) === null) return near;
  }
  return findShift(signal.a, signal.b, step, [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
}

function whyNot(signal: SharedSignal, found: FoundShift | undefined): string | null {
  if (!found) return 'the logs do not overlap enough, or it never changes';
  if (found.peak < LEAST_PEAK) return `the best correlation is ${found.peak.toFixed(2)}, and ${LEAST_PEAK} is wanted`;
  if (found.peak - found.secondPeak < LEAST_LEAD) {
    return `two shifts fit nearly as well (${found.peak.toFixed(2)} and ${found.secondPeak.toFixed(2)})`;
  }
  if (!Number.isFinite(found.u95)) return 'too few parts of the flight tell the shift by themselves';
  const clear = found.peak - found.secondPeak >= QUIET_LEAD && found.blocks >= QUIET_BLOCKS && found.u95 <= QUIET_U95;
  return signal.moved || clear ? null : 'it hardly changed in one of the logs, and its parts do not agree well enough';
}

function settled(table: LogTable, shiftSeconds: number, by: string): One {
  const alignment = { file: table.file, shiftSeconds, u95: CLOCK_U95, by, peak: 0, secondPeak: 0 };
  return { shift: shiftSeconds, alignment };
}

function shiftQuestion(first: LogTable, table: LogTable, doubts: string[], clock: number | null): ReadQuestion {
  const why = doubts.length > 0 ? doubts.join('; ') : 'they share no signal';
  const meanwhile = clock === null ? '' : ` By their clocks it would be ${clock.toFixed(1)} s.`;
  return {
    id: `alignment:${table.file}`,
    question: `How many seconds after ${first.file} does ${table.file} start? Give the shift by hand, in seconds.`,
    choices: [],
    because: `Each recorder has a clock of its own, and nothing settles the shift between these: ${why}.${meanwhile}`,
    concerns: ['alignment'],
  };
}

function clockDifference(first: LogTable, table: LogTable): number | null {
  const [a, b] = [first.time.startUtcMs, table.time.startUtcMs];
  return a === null || b === null ? null : (b - a) / 1000;
}

function isUtc(table: LogTable): boolean {
  return /^(UTC|Z|\+00:?00)$/i.test(table.time.zone);
}

function period(table: LogTable): number {
  return table.time.sampleRateHz > 0 ? 1 / table.time.sampleRateHz : COARSEST_STEP;
}
