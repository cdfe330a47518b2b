/**
 * What changed under a result since it was made: its method, a configuration value it read, or the change table asks
 * for its test again.
 */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { Touched } from '../../analysis/program/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import type { Book } from './book.ts';
import type * as rows from './current-state.ts';
import { sha256Of } from './documents.ts';
import { airplaneAt, airplaneOf } from './read-state.ts';
import { changedPaths } from './trace-reads.ts';

/**
 * @param row the result as recorded
 * @param result the result itself
 * @returns one sentence a reason; none when method and airplane are what they were
 */
export async function changedSince(book: Book, row: rows.ResultRow, result: Result): Promise<string[]> {
  return [...(await byMethod(row, result)), ...(await byAirplane(book, row, result))];
}

async function byMethod(row: rows.ResultRow, result: Result): Promise<string[]> {
  const { reductionOf } = await import('../../analysis/reductions/index.ts');
  const newest = reductionOf(row.reduction)?.note.versions[0];
  if (!newest || newest.version === result.provenance.methodVersion) return [];
  return [`The method is now version ${newest.version}: ${newest.change}`];
}

async function byAirplane(book: Book, row: rows.ResultRow, { provenance }: Result): Promise<string[]> {
  const revision = provenance.configurationRevision;
  const now = airplaneOf(book);
  if (revision === null || revision === now.revision) return [];
  const before = airplaneAt(book, revision)?.airplane ?? null;
  const read = changedPaths(row.reads, before, now.parsed);
  const reasons = read.map((path) => `The airplane's ${path} has changed since revision ${revision}.`);
  if (!before || !now.parsed) return reasons;
  const { repeat, removed } = await touched(before, now.parsed);
  const again = repeat.find((one) => row.input.tests.includes(one.test));
  const gone = removed.find((one) => row.input.tests.includes(one.test));
  if (again) reasons.push(`“${again.title}” is to be repeated: ${again.because}.`);
  if (gone) reasons.push(`“${gone.title}” no longer applies: ${gone.because}.`);
  return reasons;
}

const compared = new Map<string, Touched>();
const KEPT = 32;

/** What a change touches; the same pair of descriptions is compared once. */
async function touched(before: Airplane, after: Airplane): Promise<Touched> {
  const key = sha256Of(JSON.stringify([before, after]));
  const known = compared.get(key);
  if (known) return known;
  const { touchedBy } = await import('../../analysis/program/index.ts');
  const made = touchedBy(before, after);
  compared.set(key, made);
  for (const old of [...compared.keys()].slice(0, -KEPT)) compared.delete(old);
  return made;
}
