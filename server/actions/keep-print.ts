/** Print cards or the plan into the book's cache, for a job: the page that asked fetches the PDF when it is done. */
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import type { PrintRequest } from '../printing/print.ts';
import type { CardsWanted } from './card-input.ts';
import { printBookCards } from './print-book-cards.ts';
import { type PlanWanted, printBookPlan } from './print-plan.ts';

/** PDFs kept in a book's cache; they can be printed again at any time. */
const KEPT = 20;

export interface KeptPrint {
  /** its name in the cache */
  print: string;
  cards: string[];
  sheets: number;
  pages: number;
}

/** @throws InputProblem where there is no such card, no browser, or too many prints wait */
export async function keepPrint(
  desk: Desk,
  bookId: string,
  wanted: CardsWanted,
  by: By = {},
  request: PrintRequest = {},
): Promise<KeptPrint> {
  const { pdf, cards, sheets, pages } = await printBookCards(desk, bookId, wanted, by, request);
  return { print: await keepPdf(desk, bookId, pdf), cards: cards.map((card) => card.id), sheets, pages };
}

/** The whole plan, printed into the cache likewise. */
export async function keepPlan(
  desk: Desk,
  bookId: string,
  { paper }: PlanWanted,
  by: By = {},
  request: PrintRequest = {},
): Promise<{ print: string; pages: number }> {
  const { pdf, pages } = await printBookPlan(desk, bookId, paper, by, request);
  return { print: await keepPdf(desk, bookId, pdf), pages };
}

async function keepPdf(desk: Desk, bookId: string, pdf: Uint8Array): Promise<string> {
  const print = randomBytes(8).toString('hex');
  const folder = cacheOf(desk, bookId);
  mkdirSync(folder, { recursive: true });
  await writeFile(join(folder, `${print}.pdf`), pdf);
  forgetOld(folder);
  return print;
}

/**
 * Where a kept print lies, from the data folder.
 * @throws InputProblem `not-found`
 */
export function keptPrintPlace(desk: Desk, bookId: string, print: string): string {
  const place = `cache/${print}.pdf`;
  const there = /^[0-9a-f]{16}$/.test(print) && existsSync(join(desk.shelf.open(bookId).folder, place));
  if (!there) throw new InputProblem([problem('not-found', 'There is no such print any more; print it again.')]);
  return `${bookId}/${place}`;
}

function cacheOf(desk: Desk, bookId: string): string {
  return join(desk.shelf.open(bookId).folder, 'cache');
}

function forgetOld(folder: string): void {
  const prints = readdirSync(folder)
    .filter((name) => name.endsWith('.pdf'))
    .map((name) => ({ name, at: statSync(join(folder, name)).mtimeMs }))
    .sort((a, b) => b.at - a.at);
  for (const { name } of prints.slice(KEPT)) rmSync(join(folder, name), { force: true });
}
