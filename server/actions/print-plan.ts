/** The whole plan of an airplane to HTML and to PDF: the same document for the screen and for paper. */
import type { PlanInput } from '../../templates/plan/plan-input.ts';
import type { PlanPaper } from '../../templates/plan/plan-options.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import type { Printer, PrintRequest } from '../printing/print.ts';
import { cardInput } from './card-input.ts';
import { notePrinting } from './note-printing.ts';
import { openBook } from './open-book.ts';
import { dayInWords } from './print-cards.ts';

export interface PlanWanted {
  paper: PlanPaper;
}

export interface PrintedPlan {
  pdf: Uint8Array;
  pages: number;
}

/** The plan as the document that is shown and printed. */
export async function previewPlan(input: PlanInput, paper: PlanPaper): Promise<string> {
  // the catalogue and the templates are large, and most commands do without them
  const { planDocument } = await import('../../templates/plan/plan.view.ts');
  return planDocument(input, paper).html;
}

/**
 * The same as a PDF.
 * @throws InputProblem where there is no browser, or too many prints wait
 */
export async function printPlan(
  input: PlanInput,
  paper: PlanPaper,
  request: PrintRequest = {},
  printer?: Printer,
): Promise<PrintedPlan> {
  request.onProgress?.('writing the plan');
  const html = await previewPlan(input, paper);
  request.signal?.throwIfAborted();
  const { printer: shared } = await import('../printing/print.ts');
  const pdf = await (printer ?? shared()).printHtml(html, request);
  return { pdf, pages: pagesIn(pdf) };
}

/**
 * What the plan of a book is made from: its airplane, its program, the results accepted so far, where each test stands.
 * @throws InputProblem when the stored description no longer fits the schema
 */
export async function planInput(desk: Desk, bookId: string): Promise<PlanInput> {
  const input = await cardInput(desk, bookId, { selection: { kind: 'all' }, paper: 'half-letter' });
  const { testStatus } = await openBook(desk, bookId);
  const { program, day } = input;
  if (!program) throw new Error('the cards of a book come with their program');
  return {
    airplane: input.airplane,
    program,
    revision: input.revision,
    printed: dayInWords(day ?? desk.now()),
    status: new Map(testStatus.map((one) => [one.test, one.status])),
    ...(input.ownTests ? { ownTests: input.ownTests } : {}),
    ...(input.known ? { known: input.known } : {}),
  };
}

/** @throws InputProblem where there is no browser, or too many prints wait */
export async function printBookPlan(
  desk: Desk,
  bookId: string,
  paper: PlanPaper,
  by: By = {},
  request: PrintRequest = {},
): Promise<PrintedPlan> {
  const printed = await printPlan(await planInput(desk, bookId), paper, request);
  notePrinting(desk, bookId, [], paper, by);
  return printed;
}

/** Pages of a PDF as its page objects are written; the printing browser writes them uncompressed. */
function pagesIn(pdf: Uint8Array): number {
  return (
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0
  );
}
