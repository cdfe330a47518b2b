/** What waits for what: inherited through tests that fell away, transitively; products drop with their makers. */
import { describe, expect, it } from 'vitest';
import { type CatalogueTest, testSchema } from '../../../analysis/catalogue/index.ts';
import { itemsOf } from '../../../analysis/program/items.ts';
import { followersOf, unlocksOf, waitsOf } from '../../../analysis/program/prerequisites.ts';

function test(id: string, more: Record<string, unknown> = {}): CatalogueTest {
  return testSchema.parse({
    id,
    title: id,
    stage: 'envelope',
    system: 'stall',
    purpose: 'to be ordered',
    pass: [{ text: 'done', source: 'practice' }],
    stop: ['anything'],
    blocks: 'once',
    ...more,
  });
}

const tests = [
  test('a', { produces: ['record'], reductions: ['stall'], flightMinutes: 10 }),
  test('b', { needs: ['a'] }),
  test('c', { needs: ['b'] }),
  test('d', { needs: ['c'], consumes: ['record'] }),
  test('e', { consumes: ['lost'], needs: [] }),
  test('f', { produces: ['lost'] }),
];

describe('waits', () => {
  it('are inherited through any number of tests that fell away', () => {
    const waits = waitsOf(tests, new Set(['a', 'd']));
    expect(waits.get('d')).toEqual({ needs: ['a'], makers: [{ test: 'a', product: 'record' }], all: ['a'] });
    expect([...waits.keys()]).toEqual(['a', 'd']);
  });

  it('keep what applies and go no further behind it', () => {
    expect(waitsOf(tests, new Set(['a', 'b', 'd'])).get('d')?.needs).toEqual(['b']);
  });

  it('drop a product whose maker fell away', () => {
    expect(waitsOf(tests, new Set(['e'])).get('e')?.all).toEqual([]);
    expect(waitsOf(tests, new Set(['e', 'f'])).get('e')?.all).toEqual(['f']);
  });

  it('turn round into what each unlocks and how many follow', () => {
    const waits = waitsOf(tests, new Set(['a', 'b', 'c', 'd']));
    expect(unlocksOf(waits).get('a')).toEqual(['b', 'd']);
    expect(followersOf(waits).get('a')).toBe(3);
    expect(followersOf(waits).get('d')).toBe(0);
  });
});

describe('items', () => {
  const list = [
    test('a', { reductions: ['stall'], flightMinutes: 30, planning: { parts: 3, load: 'light-forward' } }),
    test('b', { needs: ['a'], flightMinutes: 10 }),
    test('c', { needs: ['b'], flightMinutes: 10 }),
    test('s', { stage: 'shop', reductions: ['weight-balance'] }),
    test('t', { stage: 'shop', needs: ['s'] }),
  ];
  const waits = waitsOf(list, new Set(list.map((one) => one.id)));
  const items = itemsOf(list, waits, followersOf(waits));
  const item = (key: string) => items.find((one) => one.key === key);

  it('cut a test into its parts, each after the one before', () => {
    expect(items.filter((one) => one.test === 'a').map((one) => one.key)).toEqual(['a#1', 'a#2', 'a#3']);
    expect(item('a#2')).toMatchObject({ minutes: 10, earlier: ['a#1'], flown: true });
  });

  it('wait for the last part, on an earlier outing where its data are reduced first', () => {
    expect(item('b')).toMatchObject({ earlier: ['a#3'], before: [] });
    expect(item('c')).toMatchObject({ earlier: [], before: ['b'] });
  });

  it('do not wait overnight in the shop', () => {
    expect(item('t')).toMatchObject({ earlier: [], before: ['s'] });
  });
});
