/** The short run of the fuzz; `npx tsx tests/fuzz/fuzz-reader.ts 100000` is the long one. */
import { describe, expect, it } from 'vitest';
import { fuzzReader } from './fuzz-reader.ts';

describe('mutated files', () => {
  it('never crash the reader, and a refusal has a reason', () => {
    const found = fuzzReader(1500, 20310504);
    expect(found.tried).toBe(1500);
    expect(found.accepted).toBeGreaterThan(100);
    expect(found.refused + found.asked).toBeGreaterThan(20);
  });
});
