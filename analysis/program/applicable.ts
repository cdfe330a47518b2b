/** Which tests belong in an airplane's program, each with its reason. */
import type { Airplane } from '../airplane/index.ts';
import { type Applicability, applicable, type CatalogueTest } from '../catalogue/index.ts';

export interface Chosen {
  in: { test: CatalogueTest; answer: Applicability }[];
  out: { test: CatalogueTest; answer: Applicability }[];
}

/**
 * Tests sorted into those that apply and those that do not.
 * @param tests catalogue and own tests, list
 * @param airplane the description, object
 * @returns both lists, in the order given, each with its reason
 */
export function chooseTests(tests: readonly CatalogueTest[], airplane: Airplane): Chosen {
  const judged = tests.map((test) => ({ test, answer: applicable(test, airplane) }));
  return { in: judged.filter((one) => one.answer.applies), out: judged.filter((one) => !one.answer.applies) };
}
