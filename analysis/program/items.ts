/** What is packed into outings: tests, and the parts of tests that take several outings. */
import type { CatalogueTest } from '../catalogue/index.ts';
import type { Waits } from './prerequisites.ts';
import type { Part } from './program.ts';

export interface Item extends Part {
  key: string;
  source: CatalogueTest;
  flown: boolean;
  /** on condition for a flight, else on the ground */
  minutes: number;
  /** keys that must lie in an earlier outing: what they give is known only after it */
  earlier: readonly string[];
  /** keys that must come before, on the same outing at the latest */
  before: readonly string[];
  /** place in the catalogue, the last tie-break */
  index: number;
  /** how many tests wait for it, directly or through others */
  followers: number;
}

/**
 * Tests cut into their parts, with what each waits for.
 * @param tests tests that apply, in catalogue order, list
 * @param waits waits by test id, map
 * @param followers count of tests waiting, by id, map
 * @returns items in the same order
 */
export function itemsOf(
  tests: readonly CatalogueTest[],
  waits: ReadonlyMap<string, Waits>,
  followers: ReadonlyMap<string, number>,
): Item[] {
  const byId = new Map(tests.map((test) => [test.id, test]));
  return tests.flatMap((test, index) => {
    const of = test.planning.parts;
    const flown = test.flightMinutes > 0;
    const split = { earlier: [] as string[], before: [] as string[] };
    for (const id of waits.get(test.id)?.all ?? []) {
      const first = byId.get(id);
      if (!first) continue;
      const last = keyOf({ test: id, part: first.planning.parts, of: first.planning.parts });
      (knownOnlyAfter(first, test) ? split.earlier : split.before).push(last);
    }
    return Array.from({ length: of }, (_, i): Item => {
      const part = { test: test.id, part: i + 1, of };
      const minutes = (flown ? test.flightMinutes : test.groundMinutes) / of;
      const earlier = i === 0 ? split.earlier : [keyOf({ ...part, part: i })];
      const before = i === 0 ? split.before : [];
      const base = { ...part, key: keyOf(part), source: test, flown, minutes, index };
      return { ...base, earlier, before, followers: followers.get(test.id) ?? 0 };
    });
  });
}

/** The key of a part. */
export function keyOf(part: Part): string {
  return part.of === 1 ? part.test : `${part.test}#${part.part}`;
}

/**
 * True when what a test gives is known only after its outing: its data are reduced first. In the shop a reading is
 * worked out on the spot; what the pilot sees in the air needs no reduction.
 */
function knownOnlyAfter(first: CatalogueTest, next: CatalogueTest): boolean {
  if (first.stage === 'shop' && next.stage === 'shop') return false;
  return first.reductions.length > 0 && !first.planning.judgedInFlight;
}
