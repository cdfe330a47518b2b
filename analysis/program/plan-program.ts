/** The door of the program: an airplane in, the sequenced program out. */
import type { Airplane } from '../airplane/index.ts';
import { CATALOGUE, type CatalogueTest, type Known } from '../catalogue/index.ts';
import { chooseTests, type LeftOut } from './applicable.ts';
import { assemble, type Parts } from './assemble.ts';
import { fitOutings } from './fit-outings.ts';
import { fuelFigures, longestByFuel } from './fuel-plan.ts';
import { itemsOf, keyOf } from './items.ts';
import { orderOutings } from './order.ts';
import { LONGEST_FLIGHT_MINUTES } from './outing-rules.ts';
import { followersOf, waitsOf } from './prerequisites.ts';
import type { Part, Program } from './program.ts';

export interface PlanOptions {
  /** tests of the person's own, already read by readOwnTests */
  ownTests?: readonly CatalogueTest[];
  /** results accepted so far: numbers on cards are worked out from them */
  known?: Known;
  /** longest flight, min, overhead included */
  longestFlight?: number;
  /** outings already arranged, by hand or after a change; what of them no longer holds is placed anew */
  arrangement?: readonly (readonly Part[])[] | undefined;
  /** take the arrangement as it is, also where it breaks a rule: for those that judge it afterwards */
  asItStands?: boolean;
  /** tests the person leaves out though they apply, with the reason, by id */
  leftOut?: LeftOut;
  /** ids of tests that are done: an arrangement keeps them where they are */
  done?: ReadonlySet<string>;
}

/**
 * The sequenced program of an airplane.
 * @param airplane the description, object
 * @param options own tests, accepted results, an arrangement to keep, object
 * @returns the program, plain JSON
 * @throws Error when own tests that were not read by readOwnTests wait for each other
 */
export function planProgram(airplane: Airplane, options: PlanOptions = {}): Program {
  return assemble(partsFor(airplane, options));
}

/**
 * What a program is made of, for those that arrange it anew.
 * @param airplane the description, object
 * @param options as for planProgram, object
 * @returns tests chosen, waits and outings
 * @throws Error when own tests that were not read by readOwnTests wait for each other
 */
export function partsFor(airplane: Airplane, options: PlanOptions = {}): Parts {
  const own = options.ownTests ?? [];
  const tests = [...CATALOGUE, ...own];
  const chosen = chooseTests(tests, airplane, options.leftOut);
  const waits = waitsOf(tests, new Set(chosen.in.map(({ test }) => test.id)));
  const items = itemsOf(
    chosen.in.map(({ test }) => test),
    waits,
    followersOf(waits),
  );
  const byKey = new Map(items.map((item) => [item.key, item]));
  const longestFlight = longestByFuel(fuelFigures(airplane), options.longestFlight ?? LONGEST_FLIGHT_MINUTES);
  const arranged = options.arrangement?.map((outing) => outing.flatMap((part) => byKey.get(keyOf(part)) ?? []));
  const outings = !arranged
    ? orderOutings(items, longestFlight)
    : options.asItStands
      ? arranged.filter((outing) => outing.length > 0)
      : fitOutings(arranged, items, longestFlight, options.done ?? new Set());
  return {
    airplane,
    chosen,
    waits,
    outings,
    items: byKey,
    longestFlight,
    own: new Set(own.map((test) => test.id)),
    known: options.known ?? {},
  };
}
