/**
 * One reduction of logs that were read and of written figures: the same for the service and the command. Asks what
 * must not be guessed before it computes anything.
 */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { ReadOutcome, ReadQuestion } from '../../analysis/logs/index.ts';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { InputProblem, type Problem, problem } from '../../analysis/remarks/index.ts';
import { type Result, resultSchema } from '../../analysis/results/index.ts';
import { type SegmentEdit, segmentEditsSchema } from '../../analysis/segments/index.ts';
import { traceReads } from '../book/trace-reads.ts';
import { alignLogs } from './align-logs.ts';

export interface ToReduce {
  kind: string;
  outcomes: readonly ReadOutcome[];
  points?: unknown;
  segments?: SegmentEdit[];
  /** the reduction's own, checked by its schema */
  options?: Record<string, unknown>;
  calibration?: Result;
  airplane?: Airplane;
  configurationRevision?: number;
  /** shift of a log set by hand, s, by file name */
  shifts?: Record<string, number>;
}

/** A question of one of the logs. */
export interface AskedQuestion extends ReadQuestion {
  file: string;
}

export type Reduced =
  | { answer: 'result'; result: Result; reads: string[] }
  | { answer: 'questions'; questions: AskedQuestion[] };

/**
 * @throws InputProblem for an unknown kind, a log that cannot be read, points or options that do not fit
 */
export async function reduceRecording(given: ToReduce): Promise<Reduced> {
  const reduction = await knownReduction(given.kind);
  const unreadable = given.outcomes.flatMap((outcome) => (outcome.accepted === 'no' ? problemsOf(outcome) : []));
  if (unreadable.length > 0) throw new InputProblem(unreadable);
  const questions = given.outcomes.flatMap((outcome) => questionsFor(reduction, outcome));
  if (questions.length > 0) return { answer: 'questions', questions };

  const traced = given.airplane && traceReads(given.airplane);
  const tables = given.outcomes.flatMap((outcome) => outcome.table ?? []);
  const aligned = tables.length > 0 ? await alignLogs(tables, given.shifts) : undefined;
  if (aligned?.answer === 'questions') return aligned;
  const { points, segments, options, calibration, configurationRevision } = given;
  const result = reduction.reduce({
    ...(aligned ? { recording: aligned.recording, alignment: aligned.alignment } : {}),
    ...(traced ? { airplane: traced.watched } : {}),
    ...(points === undefined ? {} : { points }),
    ...(segments ? { segments } : {}),
    ...(options ? { options } : {}),
    ...(calibration ? { calibration } : {}),
    ...(configurationRevision === undefined ? {} : { configurationRevision }),
  });
  // a result is JSON: what a page shows now is what is kept and what a script reads
  const together = aligned && aligned.alignment.length > 0 ? { ...result, alignment: aligned.alignment } : result;
  const kept = resultSchema.parse(JSON.parse(JSON.stringify(together)));
  return { answer: 'result', result: kept, reads: traced?.reads() ?? [] };
}

/** @throws InputProblem `unknown-kind` */
export async function knownReduction(kind: string): Promise<Reduction> {
  // the reductions are the larger part of the project, and a start need not wait for them
  const { REDUCTIONS, reductionOf } = await import('../../analysis/reductions/index.ts');
  const reduction = reductionOf(kind);
  if (reduction) return reduction;
  const kinds = REDUCTIONS.map((one) => one.kind).join(', ');
  throw new InputProblem([problem('unknown-kind', `There is no reduction "${kind}". There are: ${kinds}.`)]);
}

/** Segments from JSON. */
export function checkedSegments(json: unknown): SegmentEdit[] {
  const read = segmentEditsSchema.safeParse(json);
  if (read.success) return read.data;
  throw new InputProblem(
    read.error.issues.map((issue) => {
      const field = issue.path.map(String).join('.');
      return problem('bad-segments', `${field || 'the segments'}: ${issue.message}`, { field });
    }),
  );
}

/** Problems of a log among several: which one it is stands in each. */
function problemsOf({ file, problems }: ReadOutcome): Problem[] {
  return problems.map((one) => ({ ...one, message: `${file}: ${one.message}`, where: { ...one.where, file } }));
}

/** Open questions that this reduction would have to guess at: about time, about all, or about a quantity it uses. */
function questionsFor(reduction: Reduction, { file, questions }: ReadOutcome): AskedQuestion[] {
  const used = new Set([...reduction.needs, ...reduction.uses, 'time', 'all']);
  const base = (quantity: string) => quantity.replace(/#\d+$/, '');
  return questions
    .filter((one) => one.concerns.some((what) => used.has(what) || used.has(base(what))))
    .map((one) => ({ ...one, file }));
}
