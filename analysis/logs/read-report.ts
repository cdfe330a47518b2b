/** A reading as the JSON of `read --json`: SI, with samples at chosen times. */
import { quantityOf, siUnitFor } from '../units/index.ts';
import type { ReadOutcome } from './read-outcome.ts';
import type { LogChannel, LogTable } from './table.ts';

export interface ReadReport {
  file: string;
  accepted: 'yes' | 'no' | 'ask';
  problems: { code: string; message: string; where: { line?: number; column?: string; field?: string } }[];
  questions: { id: string; question: string; choices: string[]; because: string }[];
  dialect: ReadOutcome['dialect'];
  rows: number;
  rowsRejected: { line: number; reason: string }[];
  time: ReadOutcome['time'];
  channels: ReportedChannel[];
  flags: { kind: string; message: string; fromSeconds?: number; toSeconds?: number }[];
}

export interface ReportedChannel {
  column: string;
  name: string;
  quantity: string | null;
  unit: string | null;
  confidence: number;
  why: string;
  valid: number;
  flags: { kind: string; fromSeconds: number; toSeconds: number; message: string }[];
  /** SI unit of the samples, where they are SI */
  samplesUnit?: string | null;
  samples?: { t: number; value: number | null }[];
}

/**
 * The reading as JSON.
 * @param outcome a reading, object
 * @param sampleSeconds times at which each channel's value is wanted, s from the first record
 * @returns plain data in the shape that scripts rely on
 */
export function readReport(outcome: ReadOutcome, sampleSeconds?: readonly number[]): ReadReport {
  const { table } = outcome;
  return {
    file: outcome.file,
    accepted: outcome.accepted,
    problems: outcome.problems.map(({ code, message, mend, where }) => ({
      code,
      message: `${message} ${mend}`,
      where: {
        ...(where.line === undefined ? {} : { line: where.line }),
        ...(where.column === undefined ? {} : { column: where.column }),
        ...(where.field === undefined ? {} : { field: where.field }),
      },
    })),
    questions: outcome.questions.map(({ id, question, choices, because }) => ({ id, question, choices, because })),
    dialect: outcome.dialect,
    rows: outcome.rows,
    rowsRejected: outcome.rowsRejected,
    time: outcome.time,
    channels: table ? table.channels.map((channel) => reportChannel(table, channel, sampleSeconds)) : [],
    flags: outcome.flags.map((one) => ({ ...one })),
  };
}

function reportChannel(table: LogTable, channel: LogChannel, sampleSeconds?: readonly number[]): ReportedChannel {
  const { column, name, quantity, unit, confidence, why, valid } = channel;
  const flags = channel.flags.map((one) => ({
    kind: one.kind,
    fromSeconds: one.fromSeconds ?? 0,
    toSeconds: one.toSeconds ?? table.time.durationSeconds,
    message: one.message,
  }));
  const base = { column, name, quantity, unit, confidence, why, valid, flags };
  if (!sampleSeconds) return base;
  return {
    ...base,
    samplesUnit: quantity !== null && unit !== null && quantityOf(quantity) ? siUnitFor(unit) : null,
    samples: sampleSeconds.map((t) => ({ t, value: sampleAt(table, channel, t) })),
  };
}

/**
 * The value of a channel at a time: the nearest record that is no further than its own half period, else none. A
 * value is never made up between two records.
 * @param table the log, table
 * @param channel one of its channels, object
 * @param seconds time from the first record, s
 * @returns the recorded value, SI where quantity and unit are known, or null inside a gap
 */
export function sampleAt(table: LogTable, channel: LogChannel, seconds: number): number | null {
  const { seconds: t, sampleRateHz } = table.time;
  if (t.length === 0 || !Number.isFinite(seconds)) return null;
  const reach = sampleRateHz > 0 ? 0.5 / sampleRateHz : 0.5;
  const slack = 1e-6 + reach * 1e-6;
  const after = lowerBound(t, seconds);
  let best = -1;
  for (const i of [after - 1, after]) {
    const at = t[i];
    if (at === undefined || Math.abs(at - seconds) > reach + slack) continue;
    if (best < 0 || Math.abs(at - seconds) < Math.abs((t[best] ?? 0) - seconds)) best = i;
  }
  const value = best < 0 ? undefined : channel.values[best];
  return value === undefined || !Number.isFinite(value) ? null : value;
}

/**
 * Index of the first time that is not before the wanted one.
 * @param t rising times, s
 * @param wanted time, s
 * @returns index, count; the length of `t` when all are before
 */
export function lowerBound(t: Float64Array, wanted: number): number {
  let low = 0;
  let high = t.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((t[middle] ?? 0) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
