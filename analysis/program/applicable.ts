/** Which tests belong in an airplane's program, each with its reason. */
import type { Airplane } from '../airplane/index.ts';
import { type Applicability, applicable, type CatalogueTest } from '../catalogue/index.ts';

export interface Chosen {
  in: { test: CatalogueTest; answer: Applicability }[];
  out: { test: CatalogueTest; answer: Applicability; by: 'airplane' | 'person' }[];
}

/** Tests a person leaves out though the airplane needs them, with their reason, by id. */
export type LeftOut = ReadonlyMap<string, string>;

/**
 * Tests sorted into those that apply and those that do not.
 * @param tests catalogue and own tests, list
 * @param airplane the description, object
 * @param leftOut tests the person leaves out, with the reason, map
 * @returns both lists, in the order given, each with its reason and who says so
 */
export function chooseTests(tests: readonly CatalogueTest[], airplane: Airplane, leftOut: LeftOut = new Map()): Chosen {
  const chosen: Chosen = { in: [], out: [] };
  for (const test of tests) {
    const answer = applicable(test, airplane);
    const reason = leftOut.get(test.id);
    if (!answer.applies) chosen.out.push({ test, answer, by: 'airplane' });
    else if (reason === undefined) chosen.in.push({ test, answer });
    else chosen.out.push({ test, answer: { applies: false, because: `Left out: ${reason}`, paths: [] }, by: 'person' });
  }
  return chosen;
}
