/**
 * A plan after something went otherwise: a test to repeat, a no-go, a day lost. As little as possible of what is
 * printed changes, and the change is shown as a comparison.
 */
import type { Airplane } from '../airplane/index.ts';
import { type ArrangementChange, arrangementOf, compareArrangements, keyOfOuting } from './arrangement.ts';
import { flightMinutes } from './flight-search.ts';
import { fuelFigures, longestByFuel } from './fuel-plan.ts';
import { type Item, itemsOf, keyOf } from './items.ts';
import { LONGEST_FLIGHT_MINUTES } from './outing-rules.ts';
import { type PlanOptions, partsFor, planProgram } from './plan-program.ts';
import { followersOf } from './prerequisites.ts';
import type { Part, Program } from './program.ts';

export type Happened =
  | { kind: 'repeat'; test: string; part?: number }
  | { kind: 'no-go'; outing: number }
  | { kind: 'day-lost'; outing: number };

export interface Replan {
  program: Program;
  changes: ArrangementChange[];
  /** titles of printed outings whose content changed: print these anew, keep the rest */
  printAgain: string[];
  /** printed outings that keep their content and get another number: write the new one on the sheet */
  renumbered: { before: string; after: string }[];
  words: string;
}

export interface ReplanOptions extends PlanOptions {
  /** numbers of outings already flown or done: they stay as they are */
  done?: readonly number[];
  /** numbers of outings whose packet is printed */
  printed?: readonly number[];
}

/**
 * The plan after something happened.
 * @param airplane the description, object
 * @param program the program as it stands, object
 * @param happened what happened, object
 * @param options what is done and printed, own tests, object
 * @returns the new program, what changed, and which packets to print anew
 */
export function replan(airplane: Airplane, program: Program, happened: Happened, options: ReplanOptions = {}): Replan {
  const done = new Set(options.done ?? []);
  const next =
    happened.kind === 'repeat'
      ? repeated(airplane, program, happened, done, options)
      : happened.kind === 'no-go'
        ? postponed(airplane, program, happened.outing, done, options)
        : { arrangement: arrangementOf(program), words: 'A day lost changes no order: the same outing is next.' };
  const after = planProgram(airplane, { ...options, arrangement: next.arrangement });
  const changes = compareArrangements(program, after);
  const printed = new Set((options.printed ?? []).flatMap((number) => program.outings[number - 1]?.title ?? []));
  const printAgain = changes.flatMap((change) =>
    change.what === 'changed' && change.before !== null && printed.has(change.before)
      ? [change.after ?? change.before]
      : [],
  );
  const now = new Map(after.outings.map((outing) => [keyOfOuting(outing), outing.title]));
  const renumbered = program.outings.flatMap((outing) => {
    const title = now.get(keyOfOuting(outing));
    return title !== undefined && title !== outing.title && printed.has(outing.title)
      ? [{ before: outing.title, after: title }]
      : [];
  });
  return { program: after, changes, printAgain, renumbered, words: next.words };
}

interface Next {
  arrangement: Part[][];
  words: string;
}

/** The part to repeat leaves the outing that was flown and joins the first open one that can take it, else gets its own. */
function repeated(
  airplane: Airplane,
  program: Program,
  happened: { test: string; part?: number },
  done: ReadonlySet<number>,
  options: ReplanOptions,
): Next {
  const { byKey, waits, longest } = context(airplane, options);
  const arrangement = arrangementOf(program);
  const wanted = happened.part ?? 1;
  const from = arrangement.findIndex((outing) =>
    outing.some((part) => part.test === happened.test && part.part === wanted),
  );
  const part = arrangement[from]?.find((one) => one.test === happened.test && one.part === wanted);
  const item = part && byKey.get(keyOf(part));
  if (!part || !item) return { arrangement, words: `${happened.test} is not in this program.` };
  const firstOpen = Math.max(from + 1, ...[...done].map((number) => number));
  const after = arrangement.map((outing) => outing.filter((one) => one !== part));
  const followers = followersWithin(happened.test, waits);
  const limit = after.findIndex(
    (outing, i) => i >= firstOpen && outing.some((one) => followers.has(one.test) || isLaterPart(one, part)),
  );
  const end = limit < 0 ? after.length : limit;
  for (let i = firstOpen; i < end; i += 1) {
    const items = (after[i] ?? []).flatMap((one) => byKey.get(keyOf(one)) ?? []);
    if (!canJoin(item, items, longest)) continue;
    after[i]?.push(part);
    return {
      arrangement: after.filter(hasParts),
      words: `It joins “${program.outings[i]?.title ?? ''}”; nothing else moves.`,
    };
  }
  after.splice(firstOpen, 0, [part]);
  return {
    arrangement: after.filter(hasParts),
    words: 'It gets an outing of its own, next in turn; what waits for it follows.',
  };
}

/** An outing that may not go: the next open one that does not wait for it goes first, in the same stage. */
function postponed(
  airplane: Airplane,
  program: Program,
  number: number,
  done: ReadonlySet<number>,
  options: ReplanOptions,
): Next {
  const { waits } = context(airplane, options);
  const arrangement = arrangementOf(program);
  const outing = program.outings[number - 1];
  if (!outing) return { arrangement, words: `There is no outing ${number}.` };
  const blocked = new Set(outing.tests.flatMap((test) => [test, ...followersWithin(test, waits)]));
  for (const other of program.outings.slice(number)) {
    if (other.stage !== outing.stage) break;
    if (done.has(other.number)) continue;
    if (other.tests.some((test) => blocked.has(test))) {
      for (const test of other.tests) {
        blocked.add(test);
        for (const follower of followersWithin(test, waits)) blocked.add(follower);
      }
      continue;
    }
    const [moved] = arrangement.splice(other.number - 1, 1);
    if (moved) arrangement.splice(number - 1, 0, moved);
    return { arrangement, words: `“${other.title}” does not wait for it and can go first.` };
  }
  return { arrangement, words: 'Nothing else of this stage can go before it: the plan stands, and waits.' };
}

function context(airplane: Airplane, options: ReplanOptions) {
  const { chosen, waits } = partsFor(airplane, { ...options, arrangement: [] });
  const items = itemsOf(
    chosen.in.map(({ test }) => test),
    waits,
    followersOf(waits),
  );
  const longest = longestByFuel(fuelFigures(airplane), options.longestFlight ?? LONGEST_FLIGHT_MINUTES);
  return { byKey: new Map(items.map((item) => [item.key, item])), waits, longest };
}

function followersWithin(test: string, waits: ReturnType<typeof context>['waits']): Set<string> {
  const found = new Set<string>();
  const queue = [test];
  for (let id = queue.shift(); id !== undefined; id = queue.shift()) {
    for (const [other, { all }] of waits) {
      if (!all.includes(id) || found.has(other)) continue;
      found.add(other);
      queue.push(other);
    }
  }
  return found;
}

function canJoin(item: Item, others: readonly Item[], longest: number): boolean {
  if (others.length === 0 || item.source.planning.alone || others.some((one) => one.source.planning.alone))
    return false;
  if (others.some((one) => one.flown !== item.flown || one.source.stage !== item.source.stage)) return false;
  if (item.source.planning.opens !== undefined && others.some((one) => one.source.planning.opens !== undefined))
    return false;
  if (others.some((one) => one.test === item.test)) return false;
  if (!item.flown) return true;
  const sameLoad = others.every((one) => one.source.planning.load === item.source.planning.load);
  return sameLoad && flightMinutes([...others, item]) <= longest;
}

function isLaterPart(one: Part, part: Part): boolean {
  return one.test === part.test && one.part > part.part;
}

function hasParts(outing: readonly Part[]): boolean {
  return outing.length > 0;
}
