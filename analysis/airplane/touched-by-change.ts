/** What a change of the description touches: the facts the catalogue asks about. */
import type { Airplane } from './configuration.ts';
import { FACTS, type FactValue } from './facts.ts';

export interface ChangedFact {
  name: string;
  path: string;
  before: FactValue;
  after: FactValue;
  /** completes "the airplane ...", as it was and as it is */
  was: string;
  is: string;
}

/**
 * Facts that differ between two descriptions.
 * @param before the earlier description, object
 * @param after the later description, object
 * @returns changed facts, in the order of the list
 */
export function changedFacts(before: Airplane, after: Airplane): ChangedFact[] {
  return FACTS.flatMap((fact) => {
    const [was, is] = [fact.read(before), fact.read(after)];
    if (was === is) return [];
    const words = (value: FactValue) =>
      fact.says && value !== false ? fact.says(value) : value !== false && value !== 0 ? fact.has : fact.lacks;
    return [{ name: fact.name, path: fact.path, before: was, after: is, was: words(was), is: words(is) }];
  });
}
