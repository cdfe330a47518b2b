/** The short run of the fuzz; `npx tsx tests/fuzz/fuzz-reader.ts 100000 1` is the long one. */
import { expect, it } from 'vitest';
import { fuzzReader } from './fuzz-reader.ts';

it('mutated files never crash the reader, and what they show as values stood in their cells', () => {
  const found = fuzzReader(1050, 20310504);
  expect(found.wrong).toEqual([]);
  expect(found.tried).toBe(1050);
  expect(found.accepted).toBeGreaterThan(800);
  expect(found.asked).toBeGreaterThan(0);
  expect(found.refused).toBeGreaterThan(2);
  // So many values were held against their cells: the check is no empty one.
  expect(found.values).toBeGreaterThan(150_000);
  expect(found.cancelled).toBeLessThan(5);
}, 120_000);
