/**
 * The program of a book as it stands: worked out from the airplane, with the person's own tests, without what they left
 * out, in the order they arranged; and what is behind, on paper, or to be put back.
 */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { CatalogueTest } from '../../analysis/catalogue/index.ts';
import type { PlanOptions, Program } from '../../analysis/program/index.ts';
import { InputProblem, type Problem } from '../../analysis/remarks/index.ts';
import type { Book } from '../book/book.ts';
import type { StoredResult } from '../book/book-state.ts';
import { marks, printings } from '../book/current-state.ts';
import { sha256Of } from '../book/documents.ts';
import { arrangementNow, leftOutRows, outingPapers, ownTestsNow, partsDone } from '../book/plan-state.ts';
import { airplaneOf } from '../book/read-state.ts';
import { storedResults } from '../book/stored-results.ts';
import { doneTests, type Evidence } from '../book/test-status.ts';
import type { Desk } from '../desk.ts';
import { acceptedResults } from './accepted-results.ts';
import { planOnce } from './program-of.ts';

export interface BookPlan {
  airplane: Airplane;
  program: Program;
  /** what the program was made with, so that it can be made anew */
  options: PlanOptions;
  ownTests: readonly CatalogueTest[];
  /** why own tests on record are not in the program; none where they are */
  ownProblems: Problem[];
  /** keys of parts on record as done */
  partsDone: ReadonlySet<string>;
  /** outings that were printed whole, as they stood then, newest printing of each */
  papers: readonly Paper[];
}

/** A printed outing: what stood on its sheets. */
export interface Paper {
  title: string;
  parts: readonly { test: string; part: number }[];
  at: string;
}

/**
 * @param results the results of the book, where they were read already
 * @throws InputProblem when the stored description no longer fits the schema
 */
export async function planOfBook(book: Book, results?: readonly StoredResult[]): Promise<BookPlan> {
  const { parsed, problems } = airplaneOf(book);
  if (!parsed) throw new InputProblem(problems);
  const { database } = book;
  const evidence: Evidence = {
    results: results ?? (await storedResults(book)),
    marks: marks(database),
    printed: printings(database),
  };
  const own = ownTestsNow(database);
  const { tests: ownTests, problems: ownProblems } = await ownTestsIn(own.map((one) => one.file));
  const behind = partsDone(database);
  const leftOut = new Map(leftOutRows(database).flatMap((row) => (row.out ? [[row.test, row.reason] as const] : [])));
  const done = new Set([...doneTests(evidence), ...[...behind].map((key) => key.split('#')[0] ?? key)]);
  const arrangement = arrangementNow(database);
  const options: PlanOptions = {
    ownTests,
    leftOut,
    done,
    known: { results: acceptedResults(evidence.results) },
    ...(arrangement ? { arrangement } : {}),
  };
  const key = [parsed, own.map((one) => one.document), [...leftOut], [...done].sort(), arrangement, accepted(evidence)];
  return {
    airplane: parsed,
    program: await planOnce(sha256Of(JSON.stringify(key)), parsed, options),
    options,
    ownTests,
    ownProblems,
    partsDone: behind,
    papers: papersOf(book),
  };
}

/** The same by the book's name. */
export async function planOf(desk: Desk, bookId: string): Promise<BookPlan> {
  return planOfBook(desk.shelf.open(bookId));
}

function accepted({ results }: Evidence): string[] {
  return results.filter((one) => one.status === 'accepted').map((one) => `${one.number} ${one.tests.join(' ')}`);
}

/** Own tests on record; kept aside with the reason where this version of the catalogue no longer takes them. */
async function ownTestsIn(files: readonly unknown[]) {
  if (files.length === 0) return { tests: [], problems: [] };
  const { readOwnTests } = await import('../../analysis/catalogue/index.ts');
  return readOwnTests(files);
}

function papersOf(book: Book): Paper[] {
  const papers = new Map<string, Paper>();
  for (const { outings, at } of outingPapers(book.database)) {
    for (const { title, parts } of outings) papers.set(title, { title, parts, at });
  }
  return [...papers.values()];
}
