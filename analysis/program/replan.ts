/**
 * A plan after something went otherwise: a test to repeat, a no-go, a day lost. As little as possible of what is
 * printed changes, and the change is shown as a comparison.
 */
import type { Airplane } from '../airplane/index.ts';
import { arrangementOf } from './arrangement.ts';
import { type Comparison, comparePlans, type Printed, programOfArrangement } from './compare-plans.ts';
import { withItem } from './fit-outings.ts';
import { keyOf } from './items.ts';
import { boardOf, placeFor } from './placing.ts';
import { type PlanOptions, partsFor } from './plan-program.ts';
import type { Part, Program } from './program.ts';

export type Happened =
  | { kind: 'repeat'; test: string; part?: number | undefined }
  | { kind: 'no-go'; outing: number }
  | { kind: 'day-lost'; outing: number };

export interface Replan extends Comparison {
  words: string;
}

export interface ReplanOptions extends PlanOptions {
  /** numbers of outings already flown or done: they stay as they are */
  doneOutings?: readonly number[];
  /** numbers of outings whose packet is printed */
  printed?: Printed;
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
  const { doneOutings = [], printed = [], ...plan } = options;
  const gone = new Set(doneOutings);
  const next =
    happened.kind === 'repeat'
      ? repeated(airplane, program, happened, { gone, printed }, plan)
      : happened.kind === 'no-go'
        ? postponed(airplane, program, happened.outing, gone, plan)
        : { arrangement: arrangementOf(program), words: 'A day lost changes no order: the same outing is next.' };
  const after = programOfArrangement(airplane, next.arrangement, plan);
  return { ...comparePlans(program, after, printed), words: next.words };
}

interface Next {
  arrangement: Part[][];
  words: string;
}

/** The part to repeat joins the first open outing that can take it and is not printed yet, else it gets its own. */
function repeated(
  airplane: Airplane,
  program: Program,
  happened: { test: string; part?: number | undefined },
  { gone, printed }: { gone: ReadonlySet<number>; printed: Printed },
  options: PlanOptions,
): Next {
  const arrangement = arrangementOf(program);
  const { items, longestFlight } = partsFor(airplane, { ...options, arrangement: [], asItStands: true });
  const wanted = happened.part ?? 1;
  const isIt = (part: Part) => part.test === happened.test && part.part === wanted;
  const from = arrangement.findIndex((outing) => outing.some(isIt));
  const part = arrangement[from]?.find(isIt);
  const item = part && items.get(keyOf(part));
  if (!part || !item) return { arrangement, words: `${happened.test} is not in this program.` };
  if (arrangement[from]?.length === 1) {
    return { arrangement, words: 'It had its outing to itself: that outing is done again, and nothing moves.' };
  }
  const without = arrangement.map((outing) =>
    outing.filter((one) => one !== part).flatMap((one) => items.get(keyOf(one)) ?? []),
  );
  const firstOpen = Math.max(from + 1, ...gone);
  // what waited for it and was done all the same stays as it is
  const done = new Set(without.slice(0, firstOpen).flatMap((outing) => outing.map((one) => one.test)));
  const paper = new Set(printed.map((number) => number - 1));
  const { at, joins } = placeFor(item, boardOf(without, longestFlight, done), firstOpen, paper);
  if (joins) {
    const joined = without.map((outing, i) => (i === at ? withItem(outing, item) : outing));
    return {
      arrangement: partsOf(joined),
      words: `It joins “${program.outings[at]?.title ?? ''}”; nothing else moves.`,
    };
  }
  return {
    arrangement: partsOf(without.toSpliced(at, 0, [item])),
    words: 'It gets an outing of its own, next in turn; what waits for it follows.',
  };
}

/** An outing that may not go: the next open one that does not wait for it goes first, in the same stage. */
function postponed(
  airplane: Airplane,
  program: Program,
  number: number,
  gone: ReadonlySet<number>,
  options: PlanOptions,
): Next {
  const { waits } = partsFor(airplane, { ...options, arrangement: [], asItStands: true });
  const arrangement = arrangementOf(program);
  const outing = program.outings[number - 1];
  if (!outing) return { arrangement, words: `There is no outing ${number}.` };
  const blocked = new Set(outing.tests.flatMap((test) => [test, ...followersWithin(test, waits)]));
  for (const other of program.outings.slice(number)) {
    if (other.stage !== outing.stage) break;
    if (gone.has(other.number)) continue;
    if (other.tests.some((test) => blocked.has(test))) {
      for (const test of other.tests) {
        blocked.add(test);
        for (const follower of followersWithin(test, waits)) blocked.add(follower);
      }
      continue;
    }
    const [moved] = arrangement.splice(other.number - 1, 1);
    if (moved) arrangement.splice(number - 1, 0, moved);
    return { arrangement, words: `“${other.title}” does not wait for “${outing.title}” and can go first.` };
  }
  return {
    arrangement,
    words: `Nothing else of this stage can go before “${outing.title}”: the plan stands, and waits.`,
  };
}

function followersWithin(test: string, waits: ReturnType<typeof partsFor>['waits']): Set<string> {
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

function partsOf(outings: readonly (readonly Part[])[]): Part[][] {
  return outings.map((outing) => outing.map(({ test, part, of }) => ({ test, part, of })));
}
