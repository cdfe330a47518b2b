/** Why a test stands where it stands, and why an outing holds what it holds: one sentence each. */
import type { Item } from './items.ts';
import type { Waits } from './prerequisites.ts';

export interface Placing {
  item: Item;
  waits: Waits;
  /** titles by test id */
  titles: ReadonlyMap<string, string>;
  /** position in the order, by test id */
  positions: ReadonlyMap<string, number>;
  followers: number;
  outing: { number: number; flight: number | null; kind: 'shop' | 'ground' | 'flight'; items: readonly Item[] };
}

/**
 * One sentence: what a test waits for, and what makes it share or not share its outing.
 * @param placing the test in its place, object
 * @returns the sentence
 */
export function whyHere(placing: Placing): string {
  return `${afterWhat(placing)}${withWhat(placing)}.`;
}

/**
 * One sentence about an outing.
 * @param items items in order, list
 * @param kind what kind of outing, text
 * @param titles titles by test id, map
 * @returns the sentence
 */
export function whyOuting(
  items: readonly Item[],
  kind: 'shop' | 'ground' | 'flight',
  titles: ReadonlyMap<string, string>,
): string {
  const opener = items.find((item) => item.source.planning.opens);
  const first = items[0];
  if (first && first.of > 1 && items.length === 1) {
    return `Part ${first.part} of ${first.of}: each step has its own outing, and the next waits for what this one gives.`;
  }
  if (items.length === 1) {
    return first?.source.planning.alone
      ? 'Flown alone: nothing else shares it.'
      : 'On its own: nothing else that is ready fits beside it.';
  }
  if (kind === 'flight') {
    const rest = `${items.length - (opener ? 1 : 0)} measurement${items.length - (opener ? 1 : 0) === 1 ? '' : 's'} at the same load`;
    return opener
      ? `One new thing, ${opener.source.planning.opens} (${titles.get(opener.test)}), with ${rest} that add nothing new.`
      : `Nothing new: ${rest} that are all ready.`;
  }
  const systems = [...new Set(items.map((item) => item.source.system))];
  return systems.length === 1
    ? `One set-up serves all ${items.length}: ${systems[0]}.`
    : `Ready at the same time and short enough for one sitting: ${systems.join(', ')}.`;
}

function afterWhat({ item, waits, titles, positions, followers }: Placing): string {
  if (item.part > 1) return `Part ${item.part} waits for what part ${item.part - 1} gave`;
  const last = <T extends { test: string }>(list: readonly T[]): T | undefined =>
    list.reduce<T | undefined>(
      (best, one) => (best && (positions.get(best.test) ?? 0) >= (positions.get(one.test) ?? 0) ? best : one),
      undefined,
    );
  const maker = last(waits.makers);
  const need = last(waits.needs.map((test) => ({ test })));
  const title = (id: string) => `“${titles.get(id) ?? id}”`;
  if (maker && need && maker.test !== need.test) {
    return `It uses the ${maker.product} from ${title(maker.test)}, and ${title(need.test)} comes before it`;
  }
  if (maker) return `It uses the ${maker.product} from ${title(maker.test)}`;
  if (need) return `It waits for ${title(need.test)}`;
  if (followers === 0) return 'Nothing has to come before it and nothing waits for it';
  return `Nothing has to come before it, and ${followers} later test${followers === 1 ? ' waits' : 's wait'} for it`;
}

function withWhat({ item, outing }: Placing): string {
  const { planning } = item.source;
  if (outing.kind === 'flight') {
    if (planning.alone && planning.opens)
      return `; it is flown alone because it is the first time for ${planning.opens}`;
    if (planning.alone) return '; it is flown alone';
    if (planning.opens) {
      return `; it is the one new thing of flight ${outing.flight}: ${planning.opens}`;
    }
    return outing.items.length > 1
      ? `; it adds no new risk, so it shares flight ${outing.flight} at the same load`
      : `; no other card that is ready fits beside it on flight ${outing.flight}`;
  }
  if (planning.opens) return `; it is the one new thing of its session: ${planning.opens}`;
  return outing.items.length > 1 ? `; it shares its session with what is ready at the same time` : '';
}
