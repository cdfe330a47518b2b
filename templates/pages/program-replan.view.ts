/** A new plan beside the one in force: what moves, what stays, which printed sheets no longer hold, and why. */
import * as z from 'zod';
import type { Comparison } from '../../analysis/program/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count } from '../words/list.ts';
import type { PageContext } from './kept.ts';
import { changeFields, type PlanChange } from './plan-change.ts';

export const programReplanView = z.strictObject({
  frame: framePart,
  words: z.string(),
  stays: z.string(),
  changes: z.array(z.strictObject({ what: z.string(), before: z.string(), after: z.string(), words: z.string() })),
  printAgain: z.array(z.strictObject({ before: z.string(), after: z.string(), because: z.string() })),
  renumbered: z.array(z.strictObject({ before: z.string(), after: z.string() })),
  hours: z.string(),
  nothing: z.boolean(),
  action: z.string(),
  fields: z.array(z.strictObject({ name: z.string(), value: z.string() })),
  back: z.string(),
});
export type ProgramReplanView = z.infer<typeof programReplanView>;

/** What a change of an outing is called. */
const WHAT: Record<string, string> = {
  changed: 'other content',
  new: 'new',
  gone: 'falls away',
  shifted: 'other turn',
  kept: 'kept',
};

/**
 * The page of a proposed plan.
 * @param change what was asked for
 * @param made the new plan, compared with the one in force
 * @param before flights and hours of the plan in force
 */
export function programReplanPage(
  change: PlanChange,
  made: Comparison & { words: string },
  before: { flights: number; planned: number },
  { book }: PageContext,
): ProgramReplanView {
  const repeats = 'happened' in change && change.happened.some((one) => one.kind === 'repeat');
  const { hours } = made.program;
  return {
    frame: frameOf('A new plan', {
      question: 'What moves, what stays, and which sheets no longer hold?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
    }),
    words: made.words,
    stays: `${count(made.kept, 'outing')} of ${made.program.outings.length} stay as they are, in their turn.`,
    changes: made.changes.map((one) => ({
      what: WHAT[one.what] ?? one.what,
      before: one.before ?? '',
      after: one.after ?? '',
      words: `${one.words}.`,
    })),
    printAgain: made.printAgain.map((one) => ({ ...one, after: one.after ?? '', because: `${one.because}.` })),
    renumbered: made.renumbered,
    hours:
      hours.flights === before.flights && hours.planned === before.planned
        ? `${count(hours.flights, 'flight')} and about ${hours.planned} h, as before.`
        : `${count(hours.flights, 'flight')} and about ${hours.planned} h; before, ${before.flights} and ${before.planned} h.`,
    // a step done again has to be opened even where nothing moves
    nothing: made.changes.length === 0 && !repeats,
    action: bookPath(book.id, '/program/replan'),
    fields: changeFields(change),
    back: bookPath(book.id, '/program'),
  };
}
