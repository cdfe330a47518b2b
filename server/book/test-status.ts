/** The status of each test, from what the book holds: results first, then what a person said, then what was printed. */
import type { Program, TestState } from '../../analysis/program/index.ts';
import type { StoredResult, TestStatus } from './book-state.ts';
import type { MarkRow, PrintedRow } from './current-state.ts';

export interface Evidence {
  results: readonly StoredResult[];
  marks: readonly MarkRow[];
  printed: readonly Pick<PrintedRow, 'cards' | 'at'>[];
}

/** states that say a test was flown or done, whatever came of it */
const UNTOUCHED: ReadonlySet<TestState> = new Set(['planned', 'briefed']);

/** Ids of tests on which something is on record beside their printed card. */
export function doneTests(evidence: Evidence): Set<string> {
  const named = [...evidence.results.flatMap((one) => one.tests), ...evidence.marks.map((one) => one.test)];
  return new Set(named.filter((id) => !UNTOUCHED.has(statusOf(id, evidence).status)));
}

/** A result's status read as the status of the test it was flown for. */
const BY_RESULT: Record<StoredResult['status'], TestState> = {
  proposed: 'reduced',
  accepted: 'accepted',
  repeat: 'repeat',
  stale: 'stale',
};

/**
 * @param program the sequenced program
 * @param evidence what the book holds
 * @returns one for each test, in the program's order, those not applicable last
 */
export function testStatuses(program: Program, evidence: Evidence): TestStatus[] {
  const tests = program.stages.flatMap((stage) => stage.tests);
  const byId = new Map(tests.map((test) => [test.id, test]));
  const ordered = program.order.flatMap((id) => byId.get(id) ?? []);
  return [
    ...ordered.map(({ id, title }) => ({ test: id, title, ...statusOf(id, evidence) })),
    ...program.notApplicable.map(({ id, title, reason }) => ({
      test: id,
      title,
      status: 'not applicable' as const,
      because: reason,
      result: null,
    })),
  ];
}

function statusOf(id: string, { results, marks, printed }: Evidence): Omit<TestStatus, 'test' | 'title'> {
  const result = results.filter((one) => one.tests.includes(id)).at(-1);
  const mark = marks.find((one) => one.test === id);
  if (result && !(mark && mark.at > result.at)) {
    const status = BY_RESULT[result.status];
    const because = status === 'stale' ? result.stale.join(' ') : `Result ${result.number} is ${result.status}.`;
    return { status, because, result: result.number };
  }
  if (mark && mark.mark !== 'planned') {
    const note = mark.note === '' ? '' : ` ${mark.note}`;
    return { status: mark.mark, because: `Marked ${mark.mark}.${note}`, result: result?.number ?? null };
  }
  const card = printed.filter((one) => one.cards.includes(id)).at(-1);
  if (card) return { status: 'briefed', because: `Its card was printed on ${card.at.slice(0, 10)}.`, result: null };
  return { status: 'planned', because: 'Nothing is recorded for it yet.', result: null };
}
