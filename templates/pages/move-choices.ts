/** Where a test may go, as the choices of one select; and where it may not, with the reason. */
import * as z from 'zod';
import type { Moves, Program } from '../../analysis/program/index.ts';
import { bookPath } from '../parts/frame.view.ts';
import { titled } from './outing-words.ts';

export const movePart = z.strictObject({
  id: z.string(),
  action: z.string(),
  test: z.string(),
  part: z.int(),
  /** `part 2 of 5`, or empty */
  partWords: z.string(),
  choices: z.array(z.strictObject({ value: z.string(), text: z.string() })),
  refused: z.array(z.strictObject({ text: z.string(), because: z.string() })),
});
export type MovePart = z.infer<typeof movePart>;

/** The form of one part's moves. */
export function movePartOf(moves: Moves, program: Program, book: string): MovePart {
  const named = (number: number) => {
    const outing = program.outings[number - 1];
    return outing ? titled(outing, program) : 'the end';
  };
  const way = (number: number) => (number < moves.from ? 'Earlier' : 'Later');
  return {
    id: `move-${moves.test}-${moves.part}`,
    action: bookPath(book, '/program/arrange'),
    test: moves.test,
    part: moves.part,
    partWords: moves.of > 1 ? `part ${moves.part} of ${moves.of}` : '',
    choices: [
      ...moves.joins.map((number) => ({ value: `join-${number}`, text: `${way(number)}, with ${named(number)}` })),
      ...moves.own.map((number) => ({ value: `own-${number}`, text: `On its own, before ${named(number)}` })),
    ],
    refused: moves.refused.map(({ outing, because }) => ({ text: named(outing), because })),
  };
}
