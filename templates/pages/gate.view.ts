/** A gate: the evidence it asks for, what is missing, and what else to look at. It never decides for the person. */
import * as z from 'zod';
import type { GateAnswer, Program } from '../../analysis/program/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count, sentence } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import type { KeptSquawk, PageContext } from './kept.ts';
import { testPath } from './test.view.ts';

export const gateView = z.strictObject({
  frame: framePart,
  state: outcomePart,
  words: z.string(),
  evidence: z.array(
    z.strictObject({
      asks: z.string(),
      tests: z.array(z.strictObject({ title: z.string(), href: z.string(), outcome: outcomePart, words: z.string() })),
    }),
  ),
  squawks: z.array(z.strictObject({ number: z.int(), text: z.string() })),
  limitations: z.string(),
  noGo: z.string(),
  home: z.string(),
});
export type GateView = z.infer<typeof gateView>;

/** How much of the evidence is there. */
export function gateWords(answer: GateAnswer): string {
  const shown = answer.evidence.length - answer.missing.length;
  return `${shown} of ${count(answer.evidence.length, 'piece')} of evidence on the table`;
}

/** The page of a gate. */
export function gatePage(
  answer: GateAnswer,
  program: Program,
  squawks: readonly KeptSquawk[],
  { book }: PageContext,
): GateView {
  const asks = [...new Set(answer.evidence.map((one) => one.asks))];
  return {
    frame: frameOf(`Gate ${answer.id}: ${answer.title}`, {
      question: 'May we go on?',
      book,
      way: 'gates',
      crumbs: [{ text: 'Gates', href: bookPath(book.id, '/gates') }],
    }),
    state: outcomeInWords(answer.complete ? 'shown' : 'not shown'),
    words: gateWords(answer),
    evidence: asks.map((asked) => ({
      asks: sentence(asked),
      tests: answer.evidence
        .filter((one) => one.asks === asked)
        .map(({ test, title, outcome, words }) => ({
          title,
          href: testPath(book.id, test),
          outcome: outcomeInWords(outcome),
          words,
        })),
    })),
    squawks: squawks.filter((one) => one.open).map(({ number, text }) => ({ number, text })),
    limitations: program.operatingLimitations,
    noGo: sentence(answer.typicalNoGo),
    home: bookPath(book.id),
  };
}
