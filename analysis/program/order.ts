/** The order of everything: stage after stage, each packed into outings that respect every constraint. */
import { type Load, STAGES } from '../catalogue/index.ts';
import { loadOfItems, searchFlights } from './flight-search.ts';
import { groundSessions } from './ground-sessions.ts';
import type { Item } from './items.ts';

/**
 * Outings of the whole program.
 * @param items all items, list
 * @param longestFlight minutes of the longest flight, overhead included
 * @returns outings in order, each a list of items in order
 * @throws Error when items wait for each other: own tests are checked before they come here
 */
export function orderOutings(items: readonly Item[], longestFlight: number): Item[][] {
  const outings: Item[][] = [];
  const done = new Set<string>();
  let load: Load | null = null;
  for (const stage of STAGES) {
    const here = items.filter((item) => item.source.stage === stage);
    const found: Item[][] = here.some((item) => item.flown)
      ? searchFlights(here, done, longestFlight, load)
      : groundSessions(here, done, stage);
    for (const outing of found) {
      outings.push(outing);
      for (const item of outing) done.add(item.key);
      if (outing[0]?.flown && loadOfItems(outing) !== 'any') load = loadOfItems(outing);
    }
  }
  return outings;
}
