/** Arrange a program anew: a test or an outing moved by hand, or the plan made again after something happened. */
import type { Comparison, Happened, Program } from '../../analysis/program/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import type { ArrangedBecause } from '../book/plan-entries.ts';
import { arrangements } from '../book/plan-state.ts';
import type { Desk } from '../desk.ts';
import type { BookPlan } from './book-plan.ts';
import { openBookWithPlan } from './open-book.ts';
import { type Standing, standingOf } from './plan-standing.ts';

/** A test to another outing, or a whole outing to another turn. */
export type Move =
  | { test: string; part?: number | undefined; to: number; newOuting?: boolean | undefined }
  | { outing: number; to: number };

/** What the new plan would be, beside the one in force. */
export interface Proposal extends Comparison {
  words: string;
}

/** Back to the order that is worked out from the airplane alone. */
export type Change = Move | { happened: Happened[] } | { afresh: true };

/**
 * What a change would make of the program.
 * @throws InputProblem `not-movable` with the reasons where a rule of the order forbids it
 */
export async function proposeChange(desk: Desk, bookId: string, change: Change): Promise<Proposal> {
  const { plan, standing } = await planned(desk, bookId);
  return proposal(plan, standing, change);
}

/**
 * Put a change in force.
 * @returns the comparison, as it was proposed
 * @throws InputProblem `not-movable` with the reasons where a rule of the order forbids it
 */
export async function arrangeProgram(desk: Desk, bookId: string, change: Change, by: By = {}): Promise<Proposal> {
  const { plan, standing } = await planned(desk, bookId);
  const made = await proposal(plan, standing, change);
  const book = desk.shelf.open(bookId);
  const afresh = 'afresh' in change;
  if (afresh && arrangements(book.database).at(-1)?.document == null) return made;
  const arrangement = made.program.outings.map((outing) => outing.parts);
  const repeats = 'happened' in change ? change.happened.flatMap((one) => (one.kind === 'repeat' ? [one] : [])) : [];
  book.recordWith(
    (keep) => ({
      kind: 'program-arranged',
      document: afresh ? null : keep(JSON.stringify(arrangement)),
      because: becauseOf(change),
      words: made.words.slice(0, 4000),
      again: repeats.map(({ test, part = 1 }) => ({ test, part })),
    }),
    by,
  );
  return made;
}

async function planned(desk: Desk, bookId: string): Promise<{ plan: BookPlan; standing: Standing }> {
  const { state, plan } = await openBookWithPlan(desk, bookId);
  if (!plan) throw new InputProblem(state.airplane.problems);
  return { plan, standing: await standingOf(plan, state.testStatus) };
}

async function proposal(plan: BookPlan, standing: Standing, change: Change): Promise<Proposal> {
  const { airplane, program, options } = plan;
  const { printed } = standing;
  const { comparePlans, moveOuting, moveTest, planProgram, replan } = await import('../../analysis/program/index.ts');
  if ('afresh' in change) {
    const { arrangement: _kept, ...bare } = options;
    const fresh = planProgram(airplane, bare);
    return { ...comparePlans(program, fresh, printed), words: 'The order as worked out from the airplane.' };
  }
  if ('happened' in change) {
    let now: Program = program;
    const words: string[] = [];
    for (const happened of change.happened) {
      const next = replan(airplane, now, happened, { ...options, doneOutings: standing.done, printed });
      words.push(next.words);
      now = next.program;
    }
    return { ...comparePlans(program, now, printed), words: words.join(' ') };
  }
  const locked = 'outing' in change ? [change.outing, change.to] : [outingOf(program, change), change.to];
  if (locked.some((number) => standing.done.includes(number)) && !('newOuting' in change && change.newOuting)) {
    throw new InputProblem([problem('not-movable', 'It is on record as done, and stays where it is.')]);
  }
  const moved =
    'outing' in change
      ? moveOuting(airplane, program, change.outing, change.to, { ...options, printed })
      : moveTest(airplane, program, withoutBlanks(change), { ...options, printed });
  if (!moved.allowed) throw new InputProblem(moved.reasons.map((reason) => problem('not-movable', `${reason}.`)));
  const { allowed: _allowed, ...comparison } = moved;
  return { ...comparison, words: movedWords(program, change) };
}

function outingOf(program: Program, { test, part = 1 }: { test: string; part?: number | undefined }): number {
  return program.outings.find(({ parts }) => parts.some((one) => one.test === test && one.part === part))?.number ?? 0;
}

function withoutBlanks({ test, part, to, newOuting }: Extract<Move, { test: string }>) {
  return { test, to, ...(part === undefined ? {} : { part }), ...(newOuting === undefined ? {} : { newOuting }) };
}

function becauseOf(change: Change): ArrangedBecause {
  if ('afresh' in change) return 'afresh';
  if (!('happened' in change)) return 'move';
  return change.happened.some((one) => one.kind === 'repeat') ? 'repeat' : 'no-go';
}

function movedWords(program: Program, move: Move): string {
  const titleOf = (number: number) => program.outings[number - 1]?.title ?? 'the end';
  if ('outing' in move) return `“${titleOf(move.outing)}” was moved to place ${move.to}.`;
  const title = program.stages.flatMap((stage) => stage.tests).find((one) => one.id === move.test)?.title ?? move.test;
  return move.newOuting
    ? `“${title}” has an outing of its own, before “${titleOf(move.to)}”.`
    : `“${title}” was moved to “${titleOf(move.to)}”.`;
}
