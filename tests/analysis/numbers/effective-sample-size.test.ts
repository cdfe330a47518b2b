import { describe, expect, it } from 'vitest';
import {
  coverageFactor,
  meanWithin,
  type Random,
  seededRandom,
  varianceInflation,
} from '../../../analysis/numbers/index.ts';

/** A stationary first-order process with correlation time tau, unit variance. */
function wander(random: Random, n: number, dt: number, tau: number): Float64Array {
  const keep = Math.exp(-dt / tau);
  let x = random.normal();
  return Float64Array.from({ length: n }, () => {
    const now = x;
    x = keep * x + Math.sqrt(1 - keep * keep) * random.normal();
    return now;
  });
}

const covered = (repeats: number, make: (random: Random) => Float64Array, floor: number): number => {
  let inside = 0;
  for (let seed = 0; seed < repeats; seed += 1) {
    const { mean, u, nu } = meanWithin(make(seededRandom(seed)), 1, floor);
    if (Math.abs(mean) <= coverageFactor(nu) * u) inside += 1;
  }
  return inside / repeats;
};

describe('coverage of the within-segment rule, 60 s and more at 1 Hz (400 seeds each; the big run stands in tests/blind)', () => {
  it.each([
    ['correlation time 10 s, 60 s', 60, 10, 0, 0.88, 1],
    ['correlation time 10 s, 240 s', 240, 10, 0, 0.92, 1],
    ['correlation time 30 s, 240 s', 240, 30, 0, 0.88, 1],
    ['white noise over 20 s wander, 60 s', 60, 20, 2, 0.94, 1],
    ['white noise alone, 120 s', 120, 0.01, 1, 0.97, 1],
  ])('%s', (_, n, tau, white, low, high) => {
    const share = covered(
      400,
      (random) => wander(random, n, 1, tau).map((value) => value + white * random.normal()),
      10,
    );
    expect(share).toBeGreaterThanOrEqual(low);
    expect(share).toBeLessThanOrEqual(high);
  });
});

describe('variance inflation', () => {
  it('is the floor for white noise, and independent of the sample rate', () => {
    const random = seededRandom(11);
    const white = Float64Array.from({ length: 3000 }, () => random.normal());
    expect(varianceInflation(white, 1, 10)).toBe(20);
    expect(varianceInflation(white, 0.2, 10)).toBe(100);
  });

  it('approaches (1 + r)/(1 - r) of a long first-order record', () => {
    const x = wander(seededRandom(4), 40_000, 1, 40);
    const r = Math.exp(-1 / 40);
    // r1 of 40 000 samples is known to about 0.0012, which is 5 % of 1 - r
    expect(Math.abs(varianceInflation(x, 1, 10) / ((1 + r) / (1 - r)) - 1)).toBeLessThan(0.25);
  });

  it('never leaves fewer than five effective samples, and copes with constants and tiny records', () => {
    const x = wander(seededRandom(4), 100, 1, 500);
    expect(100 / varianceInflation(x, 1, 10)).toBeGreaterThanOrEqual(5);
    expect(varianceInflation(new Float64Array(300), 1, 10)).toBe(20);
    expect(varianceInflation([], 1, 10)).toBe(1);
    expect(meanWithin([4, 4], 1, 5).s).toBe(0);
  });
});
