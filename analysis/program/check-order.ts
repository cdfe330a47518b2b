/**
 * Checks a finished program against the catalogue, knowing nothing of how it was made. It reads only the program, the
 * tests and the airplane, walks the needs its own way, and names every rule that is broken.
 */
import type { Airplane } from '../airplane/index.ts';
import { applicable, type CatalogueTest, type Load, STAGES } from '../catalogue/index.ts';
import type { Outing, Program } from './program.ts';

export type Rule =
  | 'every-test-once'
  | 'only-what-applies'
  | 'stage-order'
  | 'needs-first'
  | 'made-before-used'
  | 'known-before-next'
  | 'parts-in-order'
  | 'weight-and-cg'
  | 'one-new-thing'
  | 'flown-alone'
  | 'one-load'
  | 'kinds-apart'
  | 'fuel-and-time';

export interface Violation {
  rule: Rule;
  test: string;
  words: string;
}

/** longest flight a plan may hold, min */
const MOST_FLIGHT_MINUTES = 100;

/** loads that wait until another test has shown the step before them */
const LOAD_WAITS: Readonly<Partial<Record<Load, string>>> = {
  gross: 'weight-expansion',
  'light-and-gross': 'weight-expansion',
  'forward-limit': 'weight-expansion',
  'aft-steps': 'weight-expansion',
  corners: 'aft-cg-expansion',
};

/**
 * Rules a program breaks.
 * @param program the program, object
 * @param tests every test it was made from, list
 * @param airplane the description, object
 * @param longestFlight longest flight allowed, min
 * @param leftOut ids of tests the person leaves out though they apply, set
 * @returns violations; none for a valid program
 */
export function checkOrder(
  program: Program,
  tests: readonly CatalogueTest[],
  airplane: Airplane,
  longestFlight = MOST_FLIGHT_MINUTES,
  leftOut: ReadonlySet<string> = new Set(),
): Violation[] {
  const byId = new Map(tests.map((test) => [test.id, test]));
  const applies = new Set(
    tests.filter((test) => applicable(test, airplane).applies && !leftOut.has(test.id)).map((test) => test.id),
  );
  const slots = slotsOf(program);
  return [
    ...coverage(program, byId, applies, slots),
    ...stages(program, byId),
    ...program.outings.flatMap((outing) => outingRules(outing, byId, longestFlight)),
    ...[...applies].flatMap((id) => waiting(id, byId, applies, slots)),
  ];
}

interface Slot {
  outing: number;
  place: number;
}

/** Where each test's parts lie: outing number, then place within it. */
function slotsOf(program: Program): Map<string, { part: number; slot: Slot }[]> {
  const slots = new Map<string, { part: number; slot: Slot }[]>();
  for (const outing of program.outings) {
    for (const [place, { test, part }] of outing.parts.entries()) {
      slots.set(test, [...(slots.get(test) ?? []), { part, slot: { outing: outing.number, place } }]);
    }
  }
  return slots;
}

type Slots = ReturnType<typeof slotsOf>;
type Tests = ReadonlyMap<string, CatalogueTest>;

function coverage(program: Program, byId: Tests, applies: ReadonlySet<string>, slots: Slots): Violation[] {
  const found: Violation[] = [];
  for (const id of applies) {
    const wanted = byId.get(id)?.planning.parts ?? 1;
    const parts = (slots.get(id) ?? []).map((one) => one.part);
    if (parts.length !== wanted || new Set(parts).size !== wanted) {
      found.push({
        rule: 'every-test-once',
        test: id,
        words: `${id} has parts ${parts.join(', ') || 'none'} of ${wanted}`,
      });
    }
    const outings = (slots.get(id) ?? []).map((one) => one.slot.outing);
    if (new Set(outings).size !== outings.length || parts.some((part, i) => i > 0 && part <= (parts[i - 1] ?? 0))) {
      found.push({ rule: 'parts-in-order', test: id, words: `the parts of ${id} share an outing or are out of order` });
    }
  }
  for (const id of slots.keys()) {
    if (!applies.has(id))
      found.push({ rule: 'only-what-applies', test: id, words: `${id} does not apply but is planned` });
  }
  const inOrder = [...new Set(program.outings.flatMap((outing) => outing.tests))];
  if (inOrder.join(' ') !== program.order.join(' ')) {
    found.push({ rule: 'every-test-once', test: '', words: 'the order is not that of the outings' });
  }
  return found;
}

function stages(program: Program, byId: Tests): Violation[] {
  const found: Violation[] = [];
  let reached = 0;
  for (const id of program.outings.flatMap((outing) => outing.tests)) {
    const rank = STAGES.indexOf(byId.get(id)?.stage ?? 'shop');
    if (rank < reached)
      found.push({ rule: 'stage-order', test: id, words: `${id} comes after a test of a later stage` });
    reached = Math.max(reached, rank);
  }
  return found;
}

function outingRules(outing: Outing, byId: Tests, longestFlight: number): Violation[] {
  const found: Violation[] = [];
  const tests = outing.tests.flatMap((id) => byId.get(id) ?? []);
  const say = (rule: Rule, words: string) =>
    found.push({ rule, test: outing.tests[0] ?? '', words: `outing ${outing.number}: ${words}` });
  const fresh = tests.filter((test) => test.planning.opens !== undefined);
  if (fresh.length > 1) say('one-new-thing', `${fresh.map((test) => test.id).join(' and ')} are both new`);
  if (tests.length > 1 && tests.some((test) => test.planning.alone))
    say('flown-alone', 'a test flown alone has company');
  const flown = tests.filter((test) => test.flightMinutes > 0);
  if (flown.length > 0 && flown.length !== tests.length) say('kinds-apart', 'ground work and flying are mixed');
  if ((outing.kind === 'flight') !== flown.length > 0) say('kinds-apart', `it is called a ${outing.kind}`);
  if (flown.length === 0) return found;
  const loads = new Set(flown.map((test) => test.planning.load).filter((load) => load !== 'any'));
  if (loads.size > 1) say('one-load', 'its tests want different loads');
  const onCondition = outing.parts.reduce((sum, { test, of }) => sum + (byId.get(test)?.flightMinutes ?? 0) / of, 0);
  if (Math.abs(onCondition - outing.minutesOnCondition) > 0.01)
    say('fuel-and-time', 'its minutes are not those of its tests');
  if (outing.parts.length > 1 && outing.minutesTotal > longestFlight + 0.5) {
    say('fuel-and-time', `${outing.minutesTotal} min is longer than ${longestFlight} min`);
  }
  const { fuel } = outing;
  if (outing.parts.length > 1 && fuel && fuel.burn + fuel.reserve > fuel.usable * 1.0001) {
    say('fuel-and-time', 'the tanks do not hold it with its reserve');
  }
  return found;
}

/** Needs, products and loads of one test. */
function waiting(id: string, byId: Tests, applies: ReadonlySet<string>, slots: Slots): Violation[] {
  const test = byId.get(id);
  const start = first(slots.get(id));
  if (!test || !start) return [];
  const found: Violation[] = [];
  const makers = test.consumes.flatMap((product) =>
    [...byId.values()].filter((one) => applies.has(one.id) && one.id !== id && one.produces.includes(product)),
  );
  for (const before of standing(test.needs, byId, applies)) {
    if (!isBefore(last(slots.get(before.id)), start)) {
      found.push({ rule: 'needs-first', test: id, words: `${id} needs ${before.id}, which is not done before it` });
    } else if (mustBeKnown(before, test) && last(slots.get(before.id))?.outing === start.outing) {
      found.push({
        rule: 'known-before-next',
        test: id,
        words: `${id} is on the outing whose data ${before.id} still has to give`,
      });
    }
  }
  for (const maker of makers) {
    if (!isBefore(last(slots.get(maker.id)), start)) {
      found.push({
        rule: 'made-before-used',
        test: id,
        words: `${id} uses what ${maker.id} makes, which is not done before it`,
      });
    } else if (mustBeKnown(maker, test) && last(slots.get(maker.id))?.outing === start.outing) {
      found.push({
        rule: 'known-before-next',
        test: id,
        words: `${id} uses what ${maker.id} gives on the same outing`,
      });
    }
  }
  const shown = LOAD_WAITS[test.planning.load];
  if (shown !== undefined && shown !== id && applies.has(shown) && !isBefore(last(slots.get(shown)), start)) {
    found.push({ rule: 'weight-and-cg', test: id, words: `${id} is flown at ${test.planning.load} before ${shown}` });
  }
  return found;
}

/** Needs that apply; for one that does not, those behind it. A plain walk with a list of the seen. */
function standing(needs: readonly string[], byId: Tests, applies: ReadonlySet<string>): CatalogueTest[] {
  const seen = new Set<string>();
  const queue = [...needs];
  const found: CatalogueTest[] = [];
  for (let id = queue.shift(); id !== undefined; id = queue.shift()) {
    const test = byId.get(id);
    if (!test || seen.has(id)) continue;
    seen.add(id);
    if (applies.has(id)) found.push(test);
    else queue.push(...test.needs);
  }
  return found;
}

function mustBeKnown(before: CatalogueTest, next: CatalogueTest): boolean {
  const shop = before.stage === 'shop' && next.stage === 'shop';
  return !shop && before.reductions.length > 0 && !before.planning.judgedInFlight;
}

function isBefore(one: Slot | undefined, other: Slot): boolean {
  return one !== undefined && (one.outing < other.outing || (one.outing === other.outing && one.place < other.place));
}

function first(list: { slot: Slot }[] | undefined): Slot | undefined {
  return list?.map((one) => one.slot).reduce((a, b) => (isBefore(b, a) ? b : a));
}

function last(list: { slot: Slot }[] | undefined): Slot | undefined {
  return list?.map((one) => one.slot).reduce((a, b) => (isBefore(a, b) ? b : a));
}
