/** The short run of the fuzz; `npx tsx tests/fuzz/fuzz-reader.ts 100000 1` is the long one. */
import { expect, it } from 'vitest';
import { fuzzReader } from './fuzz-reader.ts';

it('mutated files never crash the reader, and what they show as values stood in their cells', () => {
  const found = fuzzReader(2100, 20310504);
  expect(found.wrong).toEqual([]);
  expect(found.tried).toBe(2100);
  expect(found.accepted).toBeGreaterThan(1500);
  expect(found.asked).toBeGreaterThan(0);
  expect(found.refused).toBeGreaterThan(5);
  // So many values were held against their cells: the check is no empty one.
  expect(found.values).toBeGreaterThan(300_000);
  expect(found.cancelled).toBeLessThan(5);
});
