/** What a stored result predicts for other conditions, with its interval. */
import type { Prediction } from '../../analysis/reductions/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import type { Desk } from '../desk.ts';
import { knownReduction } from './reduce-recording.ts';
import { resultOf } from './result-of.ts';

/** @throws InputProblem `not-found`, or `bad-request` where the conditions do not fit */
export async function predict(desk: Desk, bookId: string, number: number, conditions: unknown): Promise<Prediction> {
  const { result } = await resultOf(desk, bookId, number);
  return predictFrom(result, conditions);
}

/** The same from a result that stands in no book. */
export async function predictFrom(result: Result, conditions: unknown): Promise<Prediction> {
  const reduction = await knownReduction(result.kind);
  if (!reduction.predict) {
    throw new InputProblem([problem('bad-request', `A ${result.kind} result does not predict readings.`)]);
  }
  const read = reduction.conditionsSchema?.safeParse(conditions);
  if (read && !read.success) {
    throw new InputProblem(
      read.error.issues.map((issue) => {
        const field = issue.path.map(String).join('.');
        return problem('bad-request', `${field || 'the conditions'}: ${issue.message}`, { field });
      }),
    );
  }
  return reduction.predict(result, conditions);
}
