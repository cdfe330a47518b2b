/** The gates of a program answered from a book: which evidence lies on the table. */
import { askGate, type GateAnswer, type Program, type TestRecord } from '../../analysis/program/index.ts';
import type { BookState } from '../book/book-state.ts';

/**
 * @param program the program of the book's airplane
 * @param state the book
 * @returns each gate with its evidence
 */
export function gateAnswers(
  program: Program,
  state: Pick<BookState, 'testStatus' | 'results' | 'leftOut'>,
): GateAnswer[] {
  const leftOut = new Map(state.leftOut.map((one) => [one.test, one]));
  const records = new Map(
    state.testStatus.map(({ test, status, result }): [string, TestRecord] => {
      const comparison = state.results
        .find((one) => one.number === result)
        ?.result.comparisons.find((one) => one.outcome !== 'shown' && !one.reference);
      const left = leftOut.get(test);
      return [
        test,
        {
          accepted: status === 'accepted' || status === 'stale',
          stale: status === 'stale',
          ...(left ? { waived: { by: left.who || 'the builder', reason: left.reason, limit: left.instead } } : {}),
          ...(comparison ? { notShown: `${comparison.what}: ${comparison.words}` } : {}),
        },
      ];
    }),
  );
  return program.gates.map((gate) => askGate(gate, records));
}
