import { describe, expect, it } from 'vitest';
import { localParabola, movingMedian, seededRandom } from '../../../analysis/numbers/index.ts';

describe('a local parabola', () => {
  it('gives a parabola back exactly, its slope and bend too, at the ends as well', () => {
    const v = Float64Array.from({ length: 101 }, (_, i) => 300 + 0.4 * (2 * i) - 0.003 * (2 * i) ** 2);
    const { value, slope, bend } = localParabola(v, 2, 40);
    for (const i of [0, 1, 37, 99, 100]) {
      expect(value[i]).toBeCloseTo(v[i] ?? 0, 8);
      expect(slope[i]).toBeCloseTo(0.4 - 0.006 * 2 * i, 8);
      expect(bend[i]).toBeCloseTo(-0.006, 8);
    }
  });

  it('has the variance of the textbook window: 9/4 over the count in the middle, four times that at an end', () => {
    const { leverage } = localParabola(new Float64Array(2001), 1, 1000);
    expect((leverage[1000] ?? 0) * 1001).toBeCloseTo(2.25, 2);
    // half a window at the end: 9 over the readings there, as they grow many
    expect(Math.abs(((leverage[0] ?? 0) * 501) / 9 - 1)).toBeLessThan(0.01);
  });

  it('scatters by as much as the leverage says', () => {
    const random = seededRandom('local parabola');
    let squares = 0;
    let leverage = 0;
    for (let trial = 0; trial < 2000; trial += 1) {
      const fit = localParabola(
        Float64Array.from({ length: 41 }, () => random.normal()),
        1,
        40,
      );
      squares += (fit.value[20] ?? 0) ** 2 / 2000;
      leverage = fit.leverage[20] ?? 0;
    }
    expect(Math.abs(squares / leverage - 1)).toBeLessThan(0.1);
  });

  it('passes over what is missing and says nothing where too little is left', () => {
    const v = Float64Array.from({ length: 60 }, (_, i) => 10 + 0.01 * i * i);
    const holed = v.map((value, i) => (i % 3 === 0 ? Number.NaN : value));
    const { value } = localParabola(holed, 1, 20);
    expect(value[30]).toBeCloseTo(v[30] ?? 0, 8);
    expect(localParabola(new Float64Array(3), 1, 20).value[1]).toBeNaN();
  });
});

describe('a moving median', () => {
  it('drops spikes and keeps a ramp, its ends included', () => {
    const v = Float64Array.from({ length: 50 }, (_, i) => i);
    v[20] = 900;
    v[21] = -900;
    const out = movingMedian(v, 10);
    expect(Math.abs((out[20] ?? 0) - 20)).toBeLessThanOrEqual(1);
    expect(out[0]).toBe(0);
    expect(out[49]).toBe(49);
    expect(out[40]).toBe(40);
  });

  it('takes the mean of the middle two of an even count and stays missing where all is missing', () => {
    const v = Float64Array.from([1, Number.NaN, 4, 6, 9]);
    expect(movingMedian(v, 4)[2]).toBe(5);
    const none = new Float64Array(9).fill(Number.NaN);
    expect(movingMedian(none, 4)[4]).toBeNaN();
  });

  it('returns the values themselves for a window of one', () => {
    expect(Array.from(movingMedian(Float64Array.from([3, 1, 2]), 1))).toEqual([3, 1, 2]);
  });
});
