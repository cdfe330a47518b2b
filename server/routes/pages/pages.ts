/** What every page is made with: the book as its pages need it, forms as they are posted, HTML as it is sent. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import type * as z from 'zod';
import type { Airplane } from '../../../analysis/airplane/index.ts';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import type { PageContext } from '../../../templates/pages/kept.ts';
import { renderPage } from '../../../templates/pages/render-page.ts';
import { USUAL_UNITS } from '../../../templates/words/unit-shown.ts';
import type { BookPlan } from '../../actions/book-plan.ts';
import { openBookWithPlan } from '../../actions/open-book.ts';
import type { BookState } from '../../book/book-state.ts';
import type { Desk } from '../../desk.ts';

/** A posted form: every name with all its values. */
export type Form = ReadonlyMap<string, readonly string[]>;

export interface OpenedBook {
  state: BookState;
  context: PageContext;
  /** null where the stored description no longer fits the schema */
  plan: BookPlan | null;
}

/** The person sits at this computer: its zone is theirs. */
const HERE = Intl.DateTimeFormat().resolvedOptions().timeZone;

/**
 * A book as its pages need it.
 * @throws InputProblem `not-found`, `book-in-use`
 */
export async function bookFor(desk: Desk, id: string): Promise<OpenedBook> {
  const { state, plan } = await openBookWithPlan(desk, id);
  const { parsed } = state.airplane;
  return {
    state,
    plan,
    context: {
      book: {
        id,
        name: parsed?.name ?? id,
        registration: parsed?.registration ?? '',
        invented: parsed?.invented ?? state.demo,
      },
      units: parsed?.instruments.units ?? USUAL_UNITS,
      zone: HERE,
    },
  };
}

/**
 * The airplane of a book, for pages that cannot do without.
 * @throws InputProblem where the stored description no longer fits the schema
 */
export function airplaneIn({ state }: OpenedBook): Airplane {
  const { parsed, problems } = state.airplane;
  if (!parsed) throw new InputProblem(problems);
  return parsed;
}

/**
 * The program of a book as it stands: arranged, with own tests, without what is left out.
 * @throws InputProblem where the stored description no longer fits the schema
 */
export function planIn({ plan, state }: OpenedBook): BookPlan {
  if (!plan) throw new InputProblem(state.airplane.problems);
  return plan;
}

/** Send a page. */
export function sendPage<S extends z.ZodType>(
  reply: FastifyReply,
  page: string,
  schema: S,
  view: z.output<S>,
): FastifyReply {
  return reply
    .type('text/html; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(renderPage(page, schema, view));
}

/** The posted form of a request. */
export function formOf(request: FastifyRequest): Form {
  const form = new Map<string, string[]>();
  if (!(request.body instanceof URLSearchParams)) return form;
  for (const [name, value] of request.body) form.set(name, [...(form.get(name) ?? []), value]);
  return form;
}

/** The last value of a field, trimmed; empty where it is not there. */
export function fieldOf(form: Form, name: string): string {
  return form.get(name)?.at(-1)?.trim() ?? '';
}

/** Who does it and why, as the form says; nothing where it says nothing. */
export function byOf(form: Form): { who?: string; why?: string } {
  const who = fieldOf(form, 'who').slice(0, 80);
  const why = fieldOf(form, 'why').slice(0, 1000);
  return { ...(who === '' ? {} : { who }), ...(why === '' ? {} : { why }) };
}

/** What a deed just did, told by the page it leads to. Only our own sentences are ever shown. */
const DONE: Record<string, string> = {
  saved: 'Saved as a new revision.',
  doubted: 'Saved as a new revision. Some figures do not fit each other: see “Worth a second look”.',
  unchanged: 'Nothing had changed, so no revision was made.',
  squawk: 'The squawk is written down.',
  settled: 'The squawk is settled.',
  hours: 'The hours are written down.',
  marked: 'Written down.',
  moved: 'Moved. The order from here on follows it.',
  arranged: 'The new plan is in force.',
  noted: 'Written down. What is next follows it.',
  own: 'Your test is in the program.',
  withdrawn: 'Your test is out of the program. The record keeps it.',
  leftout: 'Left out, with your reason. Its gate shows it as waived.',
  takenin: 'It is in the program again.',
  counting: 'Saved as a new revision of the airplane’s plan.',
  decided: 'Your decision is on record.',
  undone: 'Undone. What was there before is in force again.',
  written: 'Kept. Each box remembers who wrote it and when.',
  reducedall: 'Reduced, each flap setting by itself: the results stand below.',
  reduced: 'Reduced. Look at the flags, then decide.',
  mapped: 'Your table is kept, and is offered again for files with the same header.',
  shifted: 'The shift is kept, and is used whenever these two are reduced together.',
  unshifted: 'Taken back: the signals tell the shift again.',
  apart: 'First say how these two clocks stand to each other: their signals do not settle it.',
  asked: 'First answer what must not be guessed: it stands in the channel table.',
  received: 'The files are kept, byte for byte.',
  away: 'Put away. The record keeps it, and it can be brought back.',
  started: 'The book is open. Fill in what you know, section by section.',
  imported: 'The book is here, checked entry by entry.',
};

/** The sentence for a word in the address. */
export function doneOf(query: { done?: string | undefined }): string {
  return DONE[query.done ?? ''] ?? '';
}
