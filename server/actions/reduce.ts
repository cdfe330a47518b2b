/** Reduce logs and written figures of a book to a result, and keep it as a proposal. */
import type { ReadOutcome } from '../../analysis/logs/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { SegmentEdit } from '../../analysis/segments/index.ts';
import type { StoredResult } from '../book/book-state.ts';
import { calibrationInForce } from '../book/calibration-in-force.ts';
import { nextNumber } from '../book/current-state.ts';
import type { ReductionRequest } from '../book/entry.ts';
import type { By } from '../book/journal.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';
import { handShiftsFor } from './compare-logs.ts';
import { readStoredLog } from './read-stored-log.ts';
import {
  type AskedQuestion,
  checkedSegments,
  knownReduction,
  type Reduced,
  reduceRecording,
} from './reduce-recording.ts';
import { resultOf } from './result-of.ts';

export interface ReduceRequest {
  kind: string;
  /** ids of logs of the book; the first one sets the clock */
  logs: string[];
  /** POINTS.json */
  points?: unknown;
  /** segments set by hand; they replace the found ones */
  segments?: SegmentEdit[] | undefined;
  options?: Record<string, unknown> | undefined;
  /** number of the airspeed result to calibrate by; the one in force when absent, none when null */
  calibration?: number | null | undefined;
  /** shift of a log set by hand, s, by log id */
  shifts?: Record<string, number> | undefined;
  /** catalogue tests this run was flown for; when absent, the one test the reduction serves, where it serves one */
  tests?: string[] | undefined;
  /** the card its points were written on */
  card?: ReductionRequest['card'];
}

export type ReduceAnswer =
  | { answer: 'stored'; stored: StoredResult }
  | {
      answer: 'questions';
      questions: AskedQuestion[];
      /** the log whose clock is all that is asked about, or null */
      apart: string | null;
    };

/**
 * @returns the stored result (a refusal is one too: it says what is missing), or what must be answered first
 * @throws InputProblem when a log cannot be read, or points, segments or options do not fit
 */
export async function reduce(
  desk: Desk,
  bookId: string,
  request: ReduceRequest,
  by: By = {},
  signal?: AbortSignal,
): Promise<ReduceAnswer> {
  const { reduced, calibration, shifts, apart } = await reduceUnstored(desk, bookId, request, signal);
  if (reduced.answer === 'questions') return { ...reduced, apart };
  const book = desk.shelf.open(bookId);
  const number = nextNumber(book.database, 'result');
  const { kind, logs, points, segments, options, card } = request;
  const serves = (await knownReduction(kind)).serves;
  const tests = request.tests ?? (serves.length === 1 ? [...serves] : []);
  book.recordWith(
    (keep) => ({
      kind: 'result-reduced',
      number,
      reduction: kind,
      document: keep(JSON.stringify(reduced.result)),
      input: {
        logs,
        tests,
        ...(points === undefined ? {} : { points }),
        ...(segments ? { segments } : {}),
        ...(options ? { options } : {}),
        ...(Object.keys(shifts).length > 0 ? { shifts } : {}),
        ...(calibration ? { calibration: calibration.number } : {}),
        ...(request.calibration === null ? { calibration: null } : {}),
        ...(card ? { card } : {}),
      },
      reads: reduced.reads,
    }),
    by,
  );
  return { answer: 'stored', stored: await resultOf(desk, bookId, number) };
}

/** The same without keeping anything: for a look while segments are being moved. */
export async function reduceUnstored(
  desk: Desk,
  bookId: string,
  request: ReduceRequest,
  signal?: AbortSignal,
): Promise<{
  reduced: Reduced;
  calibration: StoredResult | undefined;
  shifts: Record<string, number>;
  apart: string | null;
}> {
  const airplane = airplaneOf(desk.shelf.open(bookId));
  const outcomes: ReadOutcome[] = [];
  for (const log of request.logs) {
    const { outcome } = await readStoredLog(desk, bookId, log, undefined, signal);
    outcomes.push(outcome);
  }
  const names = new Map(request.logs.map((log, index) => [log, outcomes[index]?.file ?? log]));
  // What is asked for now goes before what a person kept for these logs.
  const shifts = { ...handShiftsFor(desk, bookId, request.logs), ...request.shifts };
  const byName = Object.entries(shifts).map(([log, shift]) => [names.get(log) ?? log, shift] as const);
  const calibration = await calibrationFor(desk, bookId, request);
  const { kind, points, options } = request;
  const reduced = await reduceRecording({
    kind,
    outcomes,
    shifts: Object.fromEntries(byName),
    configurationRevision: airplane.revision,
    ...(airplane.parsed ? { airplane: airplane.parsed } : {}),
    ...(points === undefined ? {} : { points }),
    ...(options ? { options } : {}),
    ...(request.segments ? { segments: checkedSegments(request.segments) } : {}),
    ...(calibration ? { calibration: calibration.result } : {}),
  });
  const questions = reduced.answer === 'questions' ? reduced.questions : [];
  const [first] = questions;
  const isClock = first?.concerns.includes('alignment') && questions.every((one) => one.concerns.includes('alignment'));
  const apart = isClock ? ([...names].find(([, name]) => name === first?.file)?.[0] ?? null) : null;
  return { reduced, calibration, shifts, apart };
}

async function calibrationFor(desk: Desk, bookId: string, request: ReduceRequest): Promise<StoredResult | undefined> {
  if (request.calibration === null || !(await knownReduction(request.kind)).usesCalibration) return undefined;
  const number = request.calibration ?? (await calibrationInForce(desk.shelf.open(bookId)));
  if (number === null) return undefined;
  const stored = await resultOf(desk, bookId, number);
  if (stored.kind === 'airspeed' && stored.result.status === 'reduced') return stored;
  const words = `Result ${number} is no airspeed calibration. Name an airspeed result that was reduced, or none.`;
  throw new InputProblem([problem('bad-request', words, { field: 'calibration' })]);
}
