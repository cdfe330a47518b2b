/** Moments: exact limits, and the propagation held to a Monte Carlo run that knows nothing of the formulas. */
import { describe, expect, it } from 'vitest';
import { armAtShare, armChangeByShift, balanceOf, shareOfChord } from '../../../analysis/models/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';
import { gaussian, seeded } from '../program/random-airplane.ts';

describe('balanceOf', () => {
  it('puts equal masses at their middle and one mass at its own arm', () => {
    expect(
      balanceOf([
        { name: 'a', mass: 10, arm: 1 },
        { name: 'b', mass: 10, arm: 3 },
      ]),
    ).toMatchObject({ mass: 20, moment: 40, arm: 2 });
    expect(balanceOf([{ name: 'a', mass: 7, arm: -0.4 }]).arm).toBe(-0.4);
  });

  it('undoes an item taken out again', () => {
    const base = [
      { name: 'a', mass: 700, arm: 2.3 },
      { name: 'b', mass: 80, arm: 2.6 },
    ];
    const back = balanceOf([...base, { name: 'c', mass: 30, arm: 3 }, { name: 'c out', mass: -30, arm: 3 }]);
    expect(back.arm).toBeCloseTo(balanceOf(base).arm, 12);
  });

  it('agrees with Monte Carlo about its uncertainty, to the 3 % that 20,000 draws leave', () => {
    const items = [
      { name: 'empty', mass: 742, arm: 2.34, massU95: 2, armU95: 0.006 },
      { name: 'pilot', mass: 78, arm: 2.55 },
      { name: 'fuel', mass: 80, arm: 2.35, massU95: 1.6 },
      { name: 'tail', mass: 20, arm: 6.1, massU95: 0.4, armU95: 0.02 },
    ];
    const random = seeded(14);
    const draws = Array.from({ length: 20000 }, () =>
      balanceOf(
        items.map((one) => ({
          ...one,
          mass: one.mass + ((one.massU95 ?? 0) / 1.96) * gaussian(random),
          arm: one.arm + ((one.armU95 ?? 0) / 1.96) * gaussian(random),
        })),
      ),
    );
    const spread = (list: number[]) => {
      const mean = list.reduce((sum, one) => sum + one, 0) / list.length;
      return 1.96 * Math.sqrt(list.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (list.length - 1));
    };
    const stated = balanceOf(items);
    expect(spread(draws.map((one) => one.mass)) / stated.massU95).toBeCloseTo(1, 1);
    expect(Math.abs(spread(draws.map((one) => one.arm)) / stated.armU95 - 1)).toBeLessThan(0.03);
  });

  it('refuses what does not add up to more than nothing', () => {
    expect(() => balanceOf([])).toThrow(OutOfRange);
    expect(() => balanceOf([{ name: 'a', mass: -1, arm: 1 }])).toThrow(OutOfRange);
    expect(() => armChangeByShift(10, 0, 1, 2)).toThrow(OutOfRange);
    expect(() => shareOfChord(1, { length: 0, leadingEdge: 0 })).toThrow(OutOfRange);
  });

  it('goes to the chord and back', () => {
    const chord = { length: 1.4, leadingEdge: 2.05 };
    expect(armAtShare(shareOfChord(2.33, chord), chord)).toBeCloseTo(2.33, 12);
    expect(shareOfChord(2.33, chord)).toBeCloseTo(0.2, 12);
  });
});
