/** What the step to a revision of the airplane's description touches: tests, cards, results. */
import { readAirplane } from '../../analysis/airplane/index.ts';
import type { CatalogueTest } from '../../analysis/catalogue/index.ts';
import { type Touched, touchedBy } from '../../analysis/program/index.ts';
import type { StoredResult } from '../book/book-state.ts';
import type { Desk } from '../desk.ts';
import { revisionFile } from './revision-file.ts';

/**
 * @param number the revision that came
 * @param ownTests tests of the person's own, which it may touch too
 * @returns null for the first one, or where one of the two no longer fits the schema
 */
export function touchedByRevision(
  desk: Desk,
  bookId: string,
  number: number,
  results: readonly StoredResult[],
  ownTests: readonly CatalogueTest[] = [],
): Touched | null {
  if (number <= 1) return null;
  const [before, after] = [number - 1, number].map((one) => readAirplane(revisionFile(desk, bookId, one)).airplane);
  if (!before || !after) return null;
  const standing = results
    .filter((one) => one.decision === 'accepted')
    .map((one) => ({ id: String(one.number), tests: one.tests }));
  return touchedBy(before, after, standing, ownTests);
}
