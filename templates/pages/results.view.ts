/** The list of results, and its rows as other pages show them. */
import * as z from 'zod';
import { REDUCTIONS, reductionOf } from '../../analysis/reductions/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { nameInWords } from '../words/list.ts';
import { type OutcomePart, outcomeInWords, outcomePart } from '../words/outcome.ts';
import { quantityPart } from '../words/quantity.ts';
import { momentInWords } from '../words/time.ts';
import type { KeptResult, PageContext } from './kept.ts';
import { headlineOf } from './result-headline.ts';

export const resultRow = z.strictObject({
  number: z.int(),
  title: z.string(),
  href: z.string(),
  /** logs or written figures */
  from: z.string(),
  when: z.string(),
  label: z.string(),
  quantity: quantityPart,
  outcome: outcomePart.nullable(),
  status: outcomePart,
  /** why it no longer stands */
  stale: z.array(z.string()),
});
export type ResultRow = z.infer<typeof resultRow>;

export const resultsView = z.strictObject({
  frame: framePart,
  results: z.array(resultRow),
  kinds: z.array(z.strictObject({ title: z.string(), answers: z.string(), href: z.string() })),
});
export type ResultsView = z.infer<typeof resultsView>;

/** Address of a result's page. */
export function resultPath(book: string, number: number): string {
  return bookPath(book, `/results/${number}`);
}

/** A result as one row, newest first when mapped over a reversed list. */
export function resultInRow(kept: KeptResult, { book, units, zone }: PageContext): ResultRow {
  const href = resultPath(book.id, kept.number);
  const headline = headlineOf(kept.result, units, href);
  return {
    number: kept.number,
    title: reductionOf(kept.kind)?.title ?? nameInWords(kept.kind),
    href,
    from: kept.logNames.length > 0 ? kept.logNames.join(', ') : 'written figures',
    when: momentInWords(kept.at, zone).local,
    label: headline.label,
    quantity: headline.quantity,
    outcome: headline.comparison ? outcomeInWords(headline.comparison.outcome) : null,
    status: standingOf(kept),
    stale: [...kept.stale],
  };
}

/** Where a result stands, in the words of a test: one not decided on yet is reduced, or refused. */
export function standingOf({ status, result }: Pick<KeptResult, 'status' | 'result'>): OutcomePart {
  return outcomeInWords(status === 'proposed' ? result.status : status);
}

/** All results of a book. */
export function resultsPage(results: readonly KeptResult[], context: PageContext, done = ''): ResultsView {
  return {
    frame: frameOf('Results', {
      question: 'What do we know so far?',
      book: context.book,
      way: 'results',
      done,
    }),
    results: [...results].reverse().map((one) => resultInRow(one, context)),
    kinds: REDUCTIONS.map(({ kind, title, answers }) => ({
      title,
      answers,
      href: bookPath(context.book.id, `/results/new/${kind}`),
    })),
  };
}
