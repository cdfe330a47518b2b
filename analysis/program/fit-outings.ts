/** Outings arranged for an earlier state, put into the shape the program asks for now: what may stand, stands. */
import { STAGES } from '../catalogue/index.ts';
import type { Item } from './items.ts';
import { boardOf, followersOn, type Outings, placeFor, whyNotTogether } from './placing.ts';

/**
 * @param wanted outings as they were arranged, of items that still are, list
 * @param items all items of the program, list
 * @param longestFlight longest flight, min
 * @param done ids of tests that are done and stay where they are, set
 * @returns outings that hold every item once
 * @throws Error when items wait for each other: the tests were not checked
 */
export function fitOutings(
  wanted: Outings,
  items: readonly Item[],
  longestFlight: number,
  done: ReadonlySet<string>,
): Item[][] {
  let outings = standing(wanted, longestFlight, done);
  const seen = new Set(outings.flat().map((item) => item.key));
  const waiting = new Map(items.filter((item) => !seen.has(item.key)).map((item) => [item.key, item]));
  while (waiting.size > 0) {
    const item = [...waiting.values()].find((one) => [...one.earlier, ...one.before].every((key) => !waiting.has(key)));
    if (!item) throw new Error(`tests wait for each other: ${[...waiting.keys()].join(', ')}`);
    waiting.delete(item.key);
    const open = outings.findLastIndex((outing) => outing.some((one) => done.has(one.test))) + 1;
    const board = boardOf(outings, longestFlight, done);
    const { at, joins } = placeFor(item, board, open);
    if (joins) {
      outings[at] = withItem(outings[at] ?? [], item);
      continue;
    }
    // what waits for it and stands before its outing has to be placed behind it
    const early = new Set(followersOn(item, board).flatMap((one) => (one.at < at ? [one.item] : [])));
    for (const one of early) waiting.set(one.key, one);
    outings.splice(at, 0, [item]);
    if (early.size > 0)
      outings = outings.map((outing) => outing.filter((one) => !early.has(one))).filter((one) => one.length > 0);
  }
  return outings;
}

/** An outing with one more item, before the first that waits for it. */
export function withItem(outing: readonly Item[], item: Item): Item[] {
  const follower = outing.findIndex((one) => one.before.includes(item.key));
  return follower < 0 ? [...outing, item] : outing.toSpliced(follower, 0, item);
}

/** What of the arrangement still holds. A need that is missing is no reason: it is put in before what waits for it. */
function standing(wanted: Outings, longestFlight: number, done: ReadonlySet<string>): Item[][] {
  const arranged = new Set(wanted.flat().map((item) => item.key));
  const placed = new Set<string>();
  const kept: Item[][] = [];
  let reached = 0;
  for (const outing of wanted) {
    const here: Item[] = [];
    const beside = new Set<string>();
    for (const item of outing) {
      const met = (key: string) => placed.has(key) || !arranged.has(key);
      const follows =
        STAGES.indexOf(item.source.stage) >= reached &&
        item.earlier.every(met) &&
        item.before.every((key) => met(key) || beside.has(key));
      const once = !placed.has(item.key) && !beside.has(item.key);
      const stands = done.has(item.test) || (follows && whyNotTogether(item, here, { longestFlight }).length === 0);
      if (!once || !stands) continue;
      here.push(item);
      beside.add(item.key);
    }
    for (const key of beside) placed.add(key);
    reached = Math.max(reached, ...here.map((item) => STAGES.indexOf(item.source.stage)));
    if (here.length > 0) kept.push(here);
  }
  return kept;
}
