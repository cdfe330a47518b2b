/** Arranging the outings: each earlier or later, each test to another outing, where the order allows it. */
import * as z from 'zod';
import type { MoveBook, Program } from '../../analysis/program/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { sentence } from '../words/list.ts';
import { minutesInWords } from '../words/time.ts';
import type { PageContext } from './kept.ts';
import { movePart, movePartOf } from './move-choices.ts';
import { outingName, outingPath } from './outing-words.ts';
import { changePath } from './plan-change.ts';
import { testPath } from './test.view.ts';

const turn = z.strictObject({ to: z.int(), refused: z.string() });

export const programArrangeView = z.strictObject({
  frame: framePart,
  stages: z.array(z.strictObject({ title: z.string(), href: z.string(), current: z.boolean() })),
  heading: z.string(),
  action: z.string(),
  outings: z.array(
    z.strictObject({
      number: z.int(),
      name: z.string(),
      title: z.string(),
      href: z.string(),
      why: z.string(),
      minutes: z.string(),
      done: z.boolean(),
      printed: z.boolean(),
      earlier: turn,
      later: turn,
      tests: z.array(z.strictObject({ title: z.string(), href: z.string(), move: movePart.nullable() })),
    }),
  ),
  arranged: z.string(),
  afresh: z.string(),
});
export type ProgramArrangeView = z.infer<typeof programArrangeView>;

export interface ArrangeFacts {
  program: Program;
  moves: MoveBook;
  done: readonly number[];
  printed: readonly number[];
  /** what the arrangement in force was made for; empty where the program is as worked out */
  arranged: string;
}

/** The page of one stage's outings. */
export function programArrangePage(
  { program, moves, done, printed, arranged }: ArrangeFacts,
  wanted: string,
  { book }: PageContext,
  message = '',
): ProgramArrangeView {
  const stages = program.stages.filter(({ tests }) => tests.length > 0);
  const open = program.outings.find((one) => !done.includes(one.number))?.stage;
  const stage = stages.find((one) => one.stage === wanted) ?? stages.find((one) => one.stage === open) ?? stages[0];
  const titles = new Map(stages.flatMap(({ tests }) => tests.map((test) => [test.id, test.title] as const)));
  return {
    frame: frameOf('Arrange the outings', {
      question: 'What may go earlier or later, and what stands in the way?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
      done: message,
    }),
    stages: stages.map((one) => ({
      title: one.title,
      href: bookPath(book.id, `/program/arrange?stage=${one.stage}`),
      current: one.stage === stage?.stage,
    })),
    heading: stage?.title ?? '',
    action: bookPath(book.id, '/program/arrange'),
    outings: program.outings
      .filter((one) => one.stage === stage?.stage)
      .map((outing) => {
        const { earlier, later } = moves.turnsOf(outing.number);
        const name = outingName(outing, program);
        return {
          number: outing.number,
          name,
          title: outing.title.replace(`${name}: `, ''),
          href: outingPath(book.id, outing.number),
          why: outing.why,
          minutes: minutesInWords(outing.minutesTotal),
          done: done.includes(outing.number),
          printed: printed.includes(outing.number),
          earlier: { to: outing.number - 1, refused: sentence(earlier ?? '') },
          later: { to: outing.number + 1, refused: sentence(later ?? '') },
          tests: outing.parts.map(({ test, part }) => {
            const found = moves.movesOf(test, part);
            return {
              title: titles.get(test) ?? test,
              href: testPath(book.id, test),
              move: found && !done.includes(outing.number) ? movePartOf(found, program, book.id) : null,
            };
          }),
        };
      }),
    arranged,
    afresh: arranged === '' ? '' : changePath(book.id, { afresh: true }),
  };
}
