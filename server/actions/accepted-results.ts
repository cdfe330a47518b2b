/** Results a person accepted and that still stand, each with the tests it answers. */
import type { AcceptedResult } from '../../analysis/catalogue/index.ts';
import type { StoredResult } from '../book/book-state.ts';

export function acceptedResults(results: readonly StoredResult[]): AcceptedResult[] {
  return results
    .filter((one) => one.status === 'accepted')
    .flatMap(({ kind, tests, result, number }): AcceptedResult[] => {
      const one = { kind, result, name: `result ${number}` };
      return tests.length === 0 ? [one] : tests.map((test) => ({ ...one, test }));
    });
}
