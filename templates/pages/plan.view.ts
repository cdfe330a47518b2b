/** The whole plan as it will be printed, and printed. */
import * as z from 'zod';
import { choiceField, fieldPart } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import type { PlanPaper } from '../plan/plan-options.ts';
import type { PageContext } from './kept.ts';

export const planView = z.strictObject({
  frame: framePart,
  fields: z.array(fieldPart),
  printAction: z.string(),
  job: z.string(),
  paper: z.string(),
  jobs: z.string(),
  book: z.string(),
  preview: z.string(),
});
export type PlanPageView = z.infer<typeof planView>;

const PAPERS: readonly { value: PlanPaper; text: string }[] = [
  { value: 'letter', text: 'Letter' },
  { value: 'a4', text: 'A4' },
];

/** The page of the plan. */
export function planPage(paper: PlanPaper, { book }: PageContext): PlanPageView {
  return {
    frame: frameOf('The whole plan', {
      question: 'What would an inspector or an insurer have to see?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
      modules: ['page-print'],
    }),
    fields: [choiceField({ name: 'paper', label: 'Paper' }, PAPERS, paper)],
    printAction: bookPath(book.id, '/program/plan/print'),
    job: JSON.stringify({ deed: 'print-plan', paper }),
    paper,
    jobs: `/api${bookPath(book.id, '/jobs')}`,
    book: book.id,
    preview: bookPath(book.id, `/program/plan/preview?paper=${paper}`),
  };
}
