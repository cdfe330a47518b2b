/** Moving a test by hand: allowed moves only, else the reason. The checker of the order says what may be. */
import type { Airplane } from '../airplane/index.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { arrangementOf } from './arrangement.ts';
import { checkOrder, type Violation } from './check-order.ts';
import { type Comparison, comparePlans, type Printed, programOfArrangement } from './compare-plans.ts';
import type { PlanOptions } from './plan-program.ts';
import type { Part, Program } from './program.ts';

export interface Move {
  test: string;
  /** part of a test in several outings; the first unless said */
  part?: number;
  /** number of the outing it joins, or a new outing of its own before that one */
  to: number;
  newOuting?: boolean;
}

export type Moved = ({ allowed: true } & Comparison) | { allowed: false; reasons: string[] };

export interface MoveOptions extends PlanOptions {
  /** numbers of outings whose sheets are printed */
  printed?: Printed;
}

/**
 * A test moved to another outing.
 * @param airplane the description, object
 * @param program the program as it stands, object
 * @param move which test, and where to, object
 * @param options the options the program was made with, object
 * @returns the new program with its comparison, or the reasons why not
 */
export function moveTest(airplane: Airplane, program: Program, move: Move, options: MoveOptions = {}): Moved {
  const wanted = move.part ?? 1;
  const arrangement = arrangementOf(program);
  const from = arrangement.findIndex((outing) => outing.some((part) => isIt(part, move.test, wanted)));
  const part = arrangement[from]?.find((one) => isIt(one, move.test, wanted));
  const target = move.to - 1;
  if (!part) return { allowed: false, reasons: [`${move.test} is not in this program`] };
  if (target < 0 || target > arrangement.length || (!move.newOuting && target >= arrangement.length)) {
    return { allowed: false, reasons: [`there is no outing ${move.to}`] };
  }
  const without = arrangement.map((outing) => outing.filter((one) => one !== part));
  if (move.newOuting) without.splice(target, 0, [part]);
  else without[target]?.push(part);
  return tryArrangement(airplane, program, without, options);
}

/**
 * A whole outing moved to another turn.
 * @param airplane the description, object
 * @param program the program as it stands, object
 * @param from number of the outing
 * @param to number it is to have
 * @param options the options the program was made with, object
 * @returns the new program with its comparison, or the reasons why not
 */
export function moveOuting(
  airplane: Airplane,
  program: Program,
  from: number,
  to: number,
  options: MoveOptions = {},
): Moved {
  const arrangement = arrangementOf(program);
  const [outing] = arrangement.splice(from - 1, 1);
  if (!outing || to < 1 || to > program.outings.length)
    return { allowed: false, reasons: [`there is no outing ${outing ? to : from}`] };
  arrangement.splice(to - 1, 0, outing);
  return tryArrangement(airplane, program, arrangement, options);
}

function tryArrangement(airplane: Airplane, before: Program, arrangement: Part[][], options: MoveOptions): Moved {
  const { printed = [], ...plan } = options;
  const program = programOfArrangement(
    airplane,
    arrangement.map((outing) => bestOrder(outing, before)),
    plan,
  );
  const tests = [...CATALOGUE, ...(plan.ownTests ?? [])];
  const leftOut = new Set(plan.leftOut?.keys());
  const check = (one: Program) => checkOrder(one, tests, airplane, plan.longestFlight, leftOut);
  // what was wrong before (a step flown again after what waits for it) is not the move's doing
  const standing = new Set(check(before).map(nameOf));
  const broken = check(program).filter((one) => !standing.has(nameOf(one)));
  if (broken.length > 0) {
    const titles = new Map(program.stages.flatMap((stage) => stage.tests.map((test) => [test.id, test.title])));
    return { allowed: false, reasons: [...new Set(broken.map((one) => withTitles(one.words, titles)))] };
  }
  return { allowed: true, ...comparePlans(before, program, printed) };
}

/** A violation by what it says, whatever number its outing has now. */
function nameOf({ rule, test, words }: Violation): string {
  return `${rule} ${test} ${words.replace(/^outing \d+: /, '')}`;
}

/** Within an outing the order of the whole program is kept: it is a valid one. */
function bestOrder(outing: readonly Part[], program: Program): Part[] {
  const place = (part: Part) => program.order.indexOf(part.test);
  return [...outing].sort((a, b) => place(a) - place(b));
}

function isIt(part: Part, test: string, wanted: number): boolean {
  return part.test === test && part.part === wanted;
}

/** Names of tests as a person knows them. */
function withTitles(words: string, titles: ReadonlyMap<string, string>): string {
  return words.replace(/[a-z0-9]+(?:-[a-z0-9]+)*/g, (id) => {
    const title = titles.get(id);
    return title === undefined ? id : `“${title}”`;
  });
}
