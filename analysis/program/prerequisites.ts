/**
 * What waits for what. A need that does not apply hands on its own needs, transitively; a product is waited for where a
 * test that applies makes it. A product whose makers all fell away falls away with them. A load waits for the test that
 * shows the step before it.
 */
import { type CatalogueTest, LOAD_STEPS } from '../catalogue/index.ts';

export interface Waits {
  /** tests named as needs, inherited through those that fell away */
  needs: readonly string[];
  /** tests that make what it uses, with the product */
  makers: readonly { test: string; product: string }[];
  /** both, each once */
  all: readonly string[];
}

/**
 * What each test that applies waits for.
 * @param tests all tests of the catalogue and of the person, list
 * @param applies ids of those that apply, set
 * @returns waits by test id
 */
export function waitsOf(tests: readonly CatalogueTest[], applies: ReadonlySet<string>): Map<string, Waits> {
  const byId = new Map(tests.map((test) => [test.id, test]));
  const makers = new Map<string, string[]>();
  for (const test of tests) {
    if (!applies.has(test.id)) continue;
    for (const product of test.produces) makers.set(product, [...(makers.get(product) ?? []), test.id]);
  }
  const inherited = new Map<string, readonly string[]>();
  const needsOf = (id: string): readonly string[] => {
    const known = inherited.get(id);
    if (known) return known;
    inherited.set(id, []);
    const found = new Set<string>();
    for (const need of namedNeeds(byId.get(id))) {
      if (applies.has(need)) found.add(need);
      else for (const further of needsOf(need)) found.add(further);
    }
    const list = [...found];
    inherited.set(id, list);
    return list;
  };
  return new Map(
    tests
      .filter((test) => applies.has(test.id))
      .map((test) => {
        const needs = needsOf(test.id);
        const made = test.consumes.flatMap((product) =>
          (makers.get(product) ?? []).filter((maker) => maker !== test.id).map((maker) => ({ test: maker, product })),
        );
        return [test.id, { needs, makers: made, all: [...new Set([...needs, ...made.map((one) => one.test)])] }];
      }),
  );
}

function namedNeeds(test: CatalogueTest | undefined): string[] {
  if (!test) return [];
  const step = LOAD_STEPS[test.planning.load];
  return step === undefined || step === test.id ? test.needs : [...test.needs, step];
}

/**
 * The other way round: what waits for each test.
 * @param waits waits by test id, map
 * @returns ids by test id, in the order of the map
 */
export function unlocksOf(waits: ReadonlyMap<string, Waits>): Map<string, string[]> {
  const unlocks = new Map<string, string[]>([...waits.keys()].map((id) => [id, []]));
  for (const [id, { all }] of waits) for (const before of all) unlocks.get(before)?.push(id);
  return unlocks;
}

/**
 * How many tests wait for each, directly or through others.
 * @param waits waits by test id, map
 * @returns count by test id
 */
export function followersOf(waits: ReadonlyMap<string, Waits>): Map<string, number> {
  const unlocks = unlocksOf(waits);
  const sets = new Map<string, ReadonlySet<string>>();
  const followers = (id: string): ReadonlySet<string> => {
    const known = sets.get(id);
    if (known) return known;
    const found = new Set<string>();
    sets.set(id, found);
    for (const next of unlocks.get(id) ?? []) {
      found.add(next);
      for (const further of followers(next)) found.add(further);
    }
    return found;
  };
  return new Map([...waits.keys()].map((id) => [id, followers(id).size]));
}
