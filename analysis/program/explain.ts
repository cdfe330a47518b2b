/** Why a test stands where it stands, and why an outing holds what it holds: one sentence each. */
import type { Item } from './items.ts';
import type { Waits } from './prerequisites.ts';

type OutingKind = 'shop' | 'ground' | 'flight';

export interface Placing {
  item: Item;
  waits: Waits;
  /** titles by test id */
  titles: ReadonlyMap<string, string>;
  /** position in the order, by test id */
  positions: ReadonlyMap<string, number>;
  followers: number;
  outing: { number: number; flight: number | null; kind: OutingKind; items: readonly Item[] };
}

/**
 * One sentence: what a test waits for, and what makes it share or not share its outing.
 * @param placing the test in its place, object
 * @returns the sentence
 */
export function whyHere(placing: Placing): string {
  const after = afterWhat(placing);
  const beside = withWhat(placing);
  return `${after}${beside === '' ? '' : `; ${beside}`}.`;
}

/**
 * One sentence about an outing.
 * @param items items in order, list
 * @param kind what kind of outing, text
 * @param titles titles by test id, map
 * @param next items of the outing after it, list
 * @returns the sentence
 */
export function whyOuting(
  items: readonly Item[],
  kind: OutingKind,
  titles: ReadonlyMap<string, string>,
  next: readonly Item[] = [],
): string {
  const opener = items.find((item) => item.source.planning.opens);
  const first = items[0];
  const what = kind === 'flight' ? 'flight' : 'session';
  if (items.length === 1 && first) {
    if (first.of > 1) {
      return `Step ${first.part} of ${first.of}: each has a ${what} of its own${first.source.planning.alone ? ', and waits for what the one before showed' : ', one after the other'}.`;
    }
    if (first.source.planning.alone) return 'It has the flight to itself: full attention, nothing else on the card.';
    if (opener) return `One new thing and nothing beside it: ${opener.source.planning.opens}.`;
    return waitsFor(next, first)
      ? `On its own: what comes next waits for what it gives.`
      : `On its own: nothing else that is ready fits into the same ${what}.`;
  }
  if (kind === 'flight') {
    const rest = items.length - (opener ? 1 : 0);
    const load = 'at the same load';
    return opener
      ? `One new thing, ${opener.source.planning.opens} (“${titles.get(opener.test)}”), and ${numbered(rest, 'test')} ${load} with nothing new in ${rest === 1 ? 'it' : 'them'}.`
      : `Nothing new: ${numbered(rest, 'test')} ${load}, ready at the same time.`;
  }
  const systems = [...new Set(items.map((item) => item.source.system))];
  return systems.length === 1
    ? `One set-up serves ${items.length === 2 ? 'both' : `all ${items.length}`}: ${systems[0]}.`
    : `Ready at the same time and short enough for one session: ${systems.join(', ')}.`;
}

function afterWhat({ item, waits, titles, positions, followers }: Placing): string {
  const last = <T extends { test: string }>(list: readonly T[]): T | undefined =>
    list.reduce<T | undefined>(
      (best, one) => (best && (positions.get(best.test) ?? 0) >= (positions.get(one.test) ?? 0) ? best : one),
      undefined,
    );
  const maker = last(waits.makers);
  const need = last(waits.needs.map((test) => ({ test })));
  const title = (id: string) => `“${titles.get(id) ?? id}”`;
  const place = (one: { test: string } | undefined) => (one ? (positions.get(one.test) ?? 0) : -1);
  // what came last is what it waited for; a product says more than a bare need
  if (maker && need && place(need) > place(maker)) {
    return `It comes after ${title(need.test)}, and uses what ${title(maker.test)} gives, the ${maker.product}`;
  }
  if (maker) return `It comes after ${title(maker.test)} and uses what that gives, the ${maker.product}`;
  if (need) return `It comes after ${title(need.test)}`;
  if (followers === 0) return 'Nothing has to come before it, and nothing waits for it';
  return item.source.stage === 'shop' && place({ test: item.test }) === 1
    ? `It comes first: nothing has to come before it, and ${numbered(followers, 'test')} wait for it`
    : `Nothing has to come before it, and ${numbered(followers, 'later test')} ${followers === 1 ? 'waits' : 'wait'} for it`;
}

function withWhat({ item, outing, titles, waits, followers }: Placing): string {
  const { planning } = item.source;
  const others = outing.items.filter((one) => one !== item);
  const flight = `flight ${outing.flight}`;
  if (outing.kind !== 'flight') {
    if (planning.opens) return `it is the one new thing of its session: ${planning.opens}`;
    const beside = others[0];
    if (!beside)
      return waits.all.length > 0 && followers > 0
        ? `${numbered(followers, 'later test')} ${followers === 1 ? 'waits' : 'wait'} for it`
        : '';
    return others.length === 1
      ? `it shares a session with “${titles.get(beside.test)}”`
      : `it shares a session with ${numbered(others.length, 'other')} that are ready at the same time`;
  }
  if (item.of > 1 && others.length === 0) {
    return planning.alone
      ? `its ${item.of} steps have a flight each, and each step waits for what the one before showed`
      : `its ${item.of} parts have a flight each, one after the other`;
  }
  if (planning.alone) {
    return planning.opens
      ? `it has ${flight} to itself, being the first time for ${planning.opens}`
      : `it has ${flight} to itself`;
  }
  if (planning.opens) return `it is the one new thing of ${flight}: ${planning.opens}`;
  const opener = others.find((one) => one.source.planning.opens);
  if (opener) return `it brings nothing new, so it rides on ${flight} beside “${titles.get(opener.test)}”`;
  if (others.length > 0) return `it brings nothing new, and shares ${flight} with what is ready at the same load`;
  return `nothing else that is ready fits on ${flight}`;
}

function waitsFor(next: readonly Item[], item: Item): boolean {
  return next.some((one) => one.earlier.includes(item.key) || one.before.includes(item.key));
}

function numbered(n: number, one: string): string {
  return `${n} ${one}${n === 1 ? '' : 's'}`;
}
