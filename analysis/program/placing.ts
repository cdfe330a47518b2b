/**
 * Where one item may go in outings that stand: what it waits for lies before it, what waits for it after, and whom it
 * may share an outing with. What is on record as done stays where it is and is asked nothing more.
 */
import { STAGES } from '../catalogue/index.ts';
import { flightMinutes } from './flight-search.ts';
import { longest as longestSession } from './ground-sessions.ts';
import type { Item } from './items.ts';

export type Outings = readonly (readonly Item[])[];

/** Outings with what is needed to judge a place among them. */
export interface Board {
  outings: Outings;
  /** where each item stands, by its key */
  places: ReadonlyMap<string, { item: Item; at: number }>;
  /** ids of tests that are done and stay */
  done: ReadonlySet<string>;
  /** longest flight, min */
  longestFlight: number;
}

/** Why an item may not be where it is wanted; `test` is the other one. */
export type Obstacle =
  | { kind: 'comes-later' | 'known-later' | 'waits-earlier' | 'uses-same' | 'both-new' | 'load'; test: string }
  | { kind: 'part-later' | 'part-earlier' | 'same-test' | 'stage' | 'kind' | 'alone' | 'company-alone' }
  | { kind: 'too-long'; minutes: number; longest: number };

/**
 * Outings made ready to be judged.
 * @param outings outings in order, list
 * @param longestFlight longest flight, min
 * @param done ids of tests that are done and stay, set
 * @returns the board
 */
export function boardOf(outings: Outings, longestFlight: number, done: ReadonlySet<string> = new Set()): Board {
  const places = new Map(outings.flatMap((outing, at) => outing.map((item) => [item.key, { item, at }] as const)));
  return { outings, places, done, longestFlight };
}

/**
 * The place of least change for an item: the first outing that can take it and is not on paper yet, else one of its own.
 * @param item the item, object
 * @param board outings without the item, object
 * @param from index of the first outing that is not done
 * @param printed indexes of outings whose sheets are printed: they are left as they are, set
 * @returns the outing it joins, or the index its own outing gets
 */
export function placeFor(
  item: Item,
  board: Board,
  from = 0,
  printed: ReadonlySet<number> = new Set(),
): { at: number; joins: boolean } {
  const { outings } = board;
  const { first, last } = stageOn(item, board);
  for (let at = Math.max(first, from); at <= last; at += 1) {
    const others = outings[at] ?? [];
    if (printed.has(at)) continue;
    const free = whyNotTogether(item, others, board).length === 0 && whyNotAt(item, at, board).length === 0;
    if (free && fitsSitting(item, others)) return { at, joins: true };
  }
  return { at: Math.max(from, firstOwn(item, board)), joins: false };
}

/**
 * Index of the first outing of its own an item could have: behind its stage's beginning and all it waits for.
 * @param item the item, object
 * @param board outings, object
 * @returns the index
 */
export function firstOwn(item: Item, board: Board): number {
  const behind = [...item.earlier, ...item.before].map((key) => (board.places.get(key)?.at ?? -1) + 1);
  return Math.max(stageOn(item, board).first, ...behind);
}

/**
 * Index of the last outing of its own an item could have: before all that waits for it, and its stage's end.
 * @param item the item, object
 * @param board outings, object
 * @returns the index
 */
export function lastOwn(item: Item, board: Board): number {
  return Math.min(stageOn(item, board).last + 1, ...followersOn(item, board).map(({ at }) => at));
}

/**
 * Items that wait for an item and are not done, with where they stand.
 * @param item the item, object
 * @param board outings, object
 * @returns items and indexes of their outings
 */
export function followersOn(item: Item, board: Board): { item: Item; at: number }[] {
  return [...board.places.values()].filter(
    ({ item: other }) =>
      !board.done.has(other.test) && (other.earlier.includes(item.key) || other.before.includes(item.key)),
  );
}

/**
 * What stands in the way of an item at an outing, by what waits for what and by stage.
 * @param item the item, object
 * @param at index of the outing it is to join
 * @param board outings, object
 * @returns obstacles; none where it may stand there
 */
export function whyNotAt(item: Item, at: number, board: Board): Obstacle[] {
  const stage = board.outings[at]?.[0]?.source.stage;
  if (stage !== undefined && stage !== item.source.stage) return [{ kind: 'stage' }];
  const found: Obstacle[] = [];
  for (const key of [...item.earlier, ...item.before]) {
    const place = board.places.get(key);
    if (!place || place.at < at) continue;
    const { test } = place.item;
    if (test === item.test) found.push(place.at > at ? { kind: 'part-later' } : { kind: 'same-test' });
    else if (place.at > at) found.push({ kind: 'comes-later', test });
    else if (item.earlier.includes(key)) found.push({ kind: 'known-later', test });
  }
  for (const { item: other, at: where } of followersOn(item, board)) {
    const known = other.earlier.includes(item.key);
    if (where > at || (where === at && !known)) continue;
    const { test } = other;
    if (test === item.test) found.push(where < at ? { kind: 'part-earlier' } : { kind: 'same-test' });
    else found.push({ kind: where < at ? 'waits-earlier' : 'uses-same', test });
  }
  return found;
}

/**
 * What keeps an item from sharing an outing.
 * @param item the item, object
 * @param others who is on it, without the item, list
 * @param board the longest flight, min, of it, object
 * @returns obstacles; none where they may share, or where nobody is on it
 */
export function whyNotTogether(
  item: Item,
  others: readonly Item[],
  { longestFlight }: Pick<Board, 'longestFlight'>,
): Obstacle[] {
  if (others.length === 0) return [];
  const { planning, stage } = item.source;
  if (others.some((one) => one.source.stage !== stage)) return [{ kind: 'stage' }];
  if (others.some((one) => one.flown !== item.flown)) return [{ kind: 'kind' }];
  const found: Obstacle[] = [];
  if (planning.alone) found.push({ kind: 'alone' });
  if (others.some((one) => one.source.planning.alone)) found.push({ kind: 'company-alone' });
  const fresh = others.find((one) => one.source.planning.opens !== undefined);
  if (planning.opens !== undefined && fresh) found.push({ kind: 'both-new', test: fresh.test });
  if (others.some((one) => one.test === item.test)) found.push({ kind: 'same-test' });
  if (!item.flown) return found;
  const other = others.find(({ source }) => source.planning.load !== 'any' && source.planning.load !== planning.load);
  if (other && planning.load !== 'any') found.push({ kind: 'load', test: other.test });
  const minutes = flightMinutes([...others, item]);
  // a plan is in whole minutes
  if (Math.round(minutes) > longestFlight) found.push({ kind: 'too-long', minutes, longest: longestFlight });
  return found;
}

/** First and last outing of its stage; where there is none yet, first is where the stage would begin. */
function stageOn(item: Item, { outings }: Board): { first: number; last: number } {
  const rank = STAGES.indexOf(item.source.stage);
  // an outing that the item left empty belongs to no stage
  const ranks = outings.map((outing) => (outing[0] ? STAGES.indexOf(outing[0].source.stage) : Number.NaN));
  const beyond = ranks.findIndex((one) => one > rank);
  return {
    first: ranks.findLastIndex((one) => one < rank) + 1,
    last: (beyond < 0 ? outings.length : beyond) - 1,
  };
}

function fitsSitting(item: Item, others: readonly Item[]): boolean {
  if (item.flown) return true;
  const minutes = [...others, item].reduce((sum, one) => sum + one.minutes, 0);
  return minutes <= longestSession(item.source.stage);
}
