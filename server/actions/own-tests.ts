/** A person's own tests: saved only where they fit into the program, the chain shown where they do not. */
import type { CatalogueTest } from '../../analysis/catalogue/index.ts';
import { InputProblem, type Problem, problem } from '../../analysis/remarks/index.ts';
import type { Book } from '../book/book.ts';
import type { By } from '../book/journal.ts';
import { ownTestsNow } from '../book/plan-state.ts';
import type { Desk } from '../desk.ts';
import { planOfBook } from './book-plan.ts';

/** Own tests of a book, as they were saved. */
export function ownTestsOf(desk: Desk, bookId: string): { test: string; file: unknown }[] {
  return ownTestsNow(desk.shelf.open(bookId).database).map(({ test, file }) => ({ test, file }));
}

/**
 * @param file the test as data, with its id
 * @throws InputProblem `bad-catalogue` or `bad-order` where it does not fit, with the chain; nothing is stored then
 */
export async function saveOwnTest(desk: Desk, bookId: string, file: unknown, by: By = {}): Promise<CatalogueTest> {
  const book = desk.shelf.open(bookId);
  const test = await checkedOwnTest(book, file);
  book.recordWith((keep) => ({ kind: 'own-test-saved', test: test.id, document: keep(JSON.stringify(file)) }), by);
  return test;
}

/**
 * @throws InputProblem `not-found`, or `bad-order` where another own test waits for it
 */
export async function withdrawOwnTest(desk: Desk, bookId: string, test: string, by: By = {}): Promise<void> {
  const book = desk.shelf.open(bookId);
  if (!ownTestsNow(book.database).some((one) => one.test === test)) {
    throw new InputProblem([problem('not-found', `There is no test of your own called ${test}.`)]);
  }
  await checkOwnTests(book, test, null);
  book.record({ kind: 'own-test-saved', test, document: null }, by);
}

/**
 * The own tests of a book with one of them replaced, checked as a whole.
 * @param replaced id of the one that is replaced or withdrawn
 * @param file what it is to be; null where it goes
 * @throws InputProblem with the chain
 */
export async function checkOwnTests(book: Book, replaced: string, file: unknown): Promise<CatalogueTest[]> {
  const { readOwnTests } = await import('../../analysis/catalogue/index.ts');
  const others = ownTestsNow(book.database).filter((one) => one.test !== replaced);
  const files = [...others.map((one) => one.file), ...(file === null ? [] : [file])];
  const { tests, problems } = readOwnTests(files);
  if (problems.length > 0) throw new InputProblem(problems);
  return tests;
}

async function checkedOwnTest(book: Book, file: unknown): Promise<CatalogueTest> {
  const id = typeof file === 'object' && file !== null && 'id' in file ? String(file.id) : '';
  const tests = await checkOwnTests(book, id, file);
  const test = tests.find((one) => one.id === id);
  if (!test) throw new InputProblem([problem('bad-catalogue', 'The test has no name.', { field: 'id' })]);
  const missing = await unmade(book, test, tests);
  if (missing.length > 0) throw new InputProblem(missing);
  return test;
}

/** A product that only tests make which this airplane does not need is made by nobody. */
async function unmade(book: Book, test: CatalogueTest, own: readonly CatalogueTest[]): Promise<Problem[]> {
  const { CATALOGUE } = await import('../../analysis/catalogue/index.ts');
  const { program } = await planOfBook(book);
  const all = [...CATALOGUE, ...own];
  const done = new Set([...program.order, ...own.map((one) => one.id)]);
  return test.consumes.flatMap((product) => {
    const makers = all.filter((one) => one.id !== test.id && one.produces.includes(product));
    if (makers.some((one) => done.has(one.id))) return [];
    const chain = makers.map(
      (one) =>
        `${one.id} (${program.notApplicable.find((other) => other.id === one.id)?.reason ?? 'not in the program'})`,
    );
    const words = `${test.id} uses "${product}", which no test of this airplane makes: ${test.id} ← ${product} ← ${chain.join(', ') || 'nothing'}`;
    return [problem('bad-order', words, { field: `${test.id}.consumes` })];
  });
}
