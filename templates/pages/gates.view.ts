/** The gates in order: which stage waits, and how much of the evidence lies on the table. */
import * as z from 'zod';
import type { GateAnswer } from '../../analysis/program/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { gateWords } from './gate.view.ts';
import type { PageContext } from './kept.ts';

export const gatesView = z.strictObject({
  frame: framePart,
  gates: z.array(
    z.strictObject({ id: z.string(), title: z.string(), href: z.string(), words: z.string(), state: outcomePart }),
  ),
});
export type GatesView = z.infer<typeof gatesView>;

/** All gates. */
export function gatesPage(answers: readonly GateAnswer[], { book }: PageContext): GatesView {
  return {
    frame: frameOf('Gates', { question: 'May we go on?', book, way: 'gates' }),
    gates: answers.map((one) => ({
      id: one.id,
      title: one.title,
      href: bookPath(book.id, `/gates/${one.id}`),
      words: gateWords(one),
      state: outcomeInWords(one.complete ? 'shown' : 'not shown'),
    })),
  };
}
