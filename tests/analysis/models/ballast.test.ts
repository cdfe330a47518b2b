/** Ballast: the formula's own check, refusals, and a search held to brute force. */
import { describe, expect, it } from 'vitest';
import { balanceOf, ballastFor, loadFor, roundedUp } from '../../../analysis/models/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';
import { seeded } from '../program/random-airplane.ts';

describe('ballastFor', () => {
  it('gives the wanted centre of gravity when put back', () => {
    const ballast = ballastFor(868, 2.36, 2.45, 6.1, 5);
    const back = balanceOf([
      { name: 'airplane', mass: 868, arm: 2.36 },
      { name: 'ballast', mass: ballast, arm: 6.1 },
    ]);
    expect(back.arm).toBeCloseTo(2.45, 12);
    expect(ballastFor(868, 2.36, 2.36, 6.1, 5)).toBe(0);
  });

  it('refuses the wrong end, and a place with no lever', () => {
    expect(() => ballastFor(868, 2.36, 2.45, 0.95, 5)).toThrow(/wrong end/);
    expect(() => ballastFor(868, 2.36, 2.45, 2.5, 5)).toThrow(OutOfRange);
  });

  it('rounds up to what is on hand, not past an exact fit', () => {
    expect(roundedUp(11.2, 0.5)).toBe(11.5);
    expect(roundedUp(11.5, 0.5)).toBe(11.5);
    expect(roundedUp(0.3 + 0.6, 0.3)).toBeCloseTo(0.9, 12);
  });
});

describe('loadFor', () => {
  const base = [{ name: 'airplane', mass: 862, arm: 2.36 }];
  const places = [
    { name: 'seat', arm: 2.55, maximum: 110 },
    { name: 'baggage', arm: 3.2, maximum: 25 },
    { name: 'nose', arm: 0.95, maximum: 30 },
    { name: 'tail', arm: 6.1, maximum: 25 },
  ];

  it('reaches the mass with the centre of gravity in the band', () => {
    const found = loadFor(base, places, { mass: 1030, from: 2.34, to: 2.4 }, 1);
    expect(found).not.toBeNull();
    expect(Math.abs((found?.balance.mass ?? 0) - 1030)).toBeLessThanOrEqual(2);
    expect(found?.balance.arm).toBeGreaterThanOrEqual(2.34);
    expect(found?.balance.arm).toBeLessThanOrEqual(2.4);
    for (const one of found?.load ?? []) {
      expect(one.mass).toBeLessThanOrEqual(places.find((place) => place.name === one.name)?.maximum ?? 0);
    }
  });

  it('takes nothing where nothing is needed, and nothing is what it says where it cannot be done', () => {
    expect(loadFor(base, places, { mass: 862, from: 2.3, to: 2.4 }, 1)?.load).toEqual([]);
    expect(loadFor(base, places, { mass: 1100, from: 2.3, to: 2.4 }, 1)).toBeNull();
    expect(loadFor(base, places, { mass: 860, from: 2.3, to: 2.4 }, 1)).toBeNull();
  });

  it('finds a load wherever brute force finds one, for 60 random wishes', () => {
    const random = seeded(77);
    for (let run = 0; run < 60; run += 1) {
      const mass = 870 + Math.floor(random() * 180);
      const from = 2.3 + random() * 0.15;
      const wanted = { mass, from, to: from + 0.03 };
      const mine = loadFor(base, places, wanted, 5);
      // within half a band of the edge rounding to bags decides, not the search
      const inner = bruteForce({ mass, from: from + 0.008, to: from + 0.022 });
      if (inner) expect(mine, JSON.stringify(wanted)).not.toBeNull();
      if (mine) expect(bruteForce({ mass, from: from - 0.02, to: from + 0.05 })).toBe(true);
    }
  });

  function bruteForce(wanted: { mass: number; from: number; to: number }): boolean {
    const add = wanted.mass - 862;
    for (let baggage = 0; baggage <= 25; baggage += 5) {
      for (let nose = 0; nose <= 30; nose += 5) {
        for (let tail = 0; tail <= 25; tail += 5) {
          const seat = add - baggage - nose - tail;
          if (seat < 0 || seat > 110) continue;
          const arm = (862 * 2.36 + seat * 2.55 + baggage * 3.2 + nose * 0.95 + tail * 6.1) / wanted.mass;
          if (arm >= wanted.from && arm <= wanted.to) return true;
        }
      }
    }
    return false;
  }
});
