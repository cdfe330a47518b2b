/** The search for flights: no wider search finds fewer, and no stage has fewer flights than it has new things. */
import { describe, expect, it } from 'vitest';
import type { Airplane } from '../../../analysis/airplane/index.ts';
import { CATALOGUE, STAGES, type Stage } from '../../../analysis/catalogue/index.ts';
import { chooseTests } from '../../../analysis/program/applicable.ts';
import { searchFlights } from '../../../analysis/program/flight-search.ts';
import { type Item, itemsOf } from '../../../analysis/program/items.ts';
import { followersOf, waitsOf } from '../../../analysis/program/prerequisites.ts';
import { demo, demoJson } from '../demo-airplanes.ts';
import { randomAirplane, seeded } from './random-airplane.ts';

function stagesOf(airplane: Airplane): { stage: Stage; items: Item[]; done: ReadonlySet<string> }[] {
  const { in: chosen } = chooseTests(CATALOGUE, airplane);
  const waits = waitsOf(CATALOGUE, new Set(chosen.map(({ test }) => test.id)));
  const items = itemsOf(
    chosen.map(({ test }) => test),
    waits,
    followersOf(waits),
  );
  return STAGES.map((stage, i) => ({
    stage,
    items: items.filter((item) => item.source.stage === stage),
    done: new Set(items.filter((item) => STAGES.indexOf(item.source.stage) < i).map((item) => item.key)),
  })).filter(({ items: here }) => here.some((item) => item.flown));
}

const flights = (outings: readonly (readonly Item[])[]) => outings.filter((outing) => outing[0]?.flown);

describe('the search for flights', () => {
  const random = seeded(99);
  const airplanes = [
    demo('ouzel'),
    demo('wrenlet'),
    ...Array.from({ length: 16 }, (_, i) => randomAirplane(demoJson(i % 2 === 0 ? 'ouzel' : 'wrenlet'), random)),
  ];

  it('finds as few flights as a search ten times as wide', () => {
    for (const { items, done } of airplanes.flatMap(stagesOf)) {
      const found = flights(searchFlights(items, done, 100, null));
      const wide = flights(searchFlights(items, done, 100, null, 60));
      expect(found).toHaveLength(wide.length);
      const fresh = items.filter((item) => item.flown && (item.source.planning.opens ?? item.source.planning.alone));
      expect(found.length).toBeGreaterThanOrEqual(fresh.length);
    }
  });

  it('is better than taking the first that fits: a narrow search needs more', () => {
    const narrow = stagesOf(demo('ouzel')).reduce(
      (sum, one) => sum + flights(searchFlights(one.items, one.done, 100, null, 1)).length,
      0,
    );
    const found = stagesOf(demo('ouzel')).reduce(
      (sum, one) => sum + flights(searchFlights(one.items, one.done, 100, null)).length,
      0,
    );
    expect(found).toBeLessThan(narrow);
  });

  it('flies more often when flights must be short, and never one that is too long', () => {
    for (const { items, done } of stagesOf(demo('ouzel'))) {
      const long = flights(searchFlights(items, done, 100, null));
      const short = flights(searchFlights(items, done, 60, null));
      expect(short.length).toBeGreaterThanOrEqual(long.length);
    }
  });

  it('says which tests wait for each other', () => {
    const stage = stagesOf(demo('wrenlet')).find((one) => one.stage === 'handling');
    const items = (stage?.items ?? []).map((item, i, all) => ({
      ...item,
      before: [all[(i + 1) % all.length]?.key ?? ''],
    }));
    expect(() => searchFlights(items, new Set(), 100, null)).toThrow(/wait for each other/);
  });
});
