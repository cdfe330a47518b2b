import { describe, expect, it } from 'vitest';
import { coverageFactor, scatterPosterior, scatterWithPrior, seededRandom } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

const prior = { s0: 0.5, factor: 2.5 };
const half = (rss: number, nu: number) => {
  const { s, nu: degrees } = scatterPosterior(prior, rss, nu);
  return coverageFactor(degrees) * s;
};

describe('scatter with a wide prior', () => {
  it('is the conjugate prior’s interval when there are no runs', () => {
    const conjugate = scatterWithPrior({ s0: 0.5, nu0: 2 }, 0, 0);
    expect(half(0, 0) / (coverageFactor(conjugate.nu) * conjugate.s)).toBeCloseTo(1, 1);
  });

  it('becomes the runs’ own t interval as they grow', () => {
    for (const s of [0.05, 0.5, 2]) expect(half(60 * s * s, 60) / (coverageFactor(60) * s)).toBeCloseTo(1, 1);
  });

  it('has no step where runs are added one at a time', () => {
    let last = half(0.05 ** 2 * 5, 5);
    for (let nu = 6; nu < 20; nu += 1) {
      const next = half(0.05 ** 2 * nu, nu);
      expect(next / last).toBeGreaterThan(0.75);
      expect(next).toBeLessThan(last);
      last = next;
    }
  });

  it('covers 90 to 99.9 % for true scatters from a tenth of the prior to two and a half times it', () => {
    for (const truth of [0.05, 0.2, 0.5, 1.25]) {
      for (const nu of [3, 8, 16]) {
        const random = seededRandom(`cover ${truth} ${nu}`);
        let inside = 0;
        const runs = 400;
        for (let k = 0; k < runs; k += 1) {
          const rss = truth ** 2 * nu * random.chiSquareOver(nu);
          if (Math.abs(truth * random.normal()) <= half(rss, nu)) inside += 1;
        }
        expect(inside / runs, `scatter ${truth}, nu ${nu}`).toBeGreaterThan(0.9);
      }
    }
  });

  it('scales with its unit and refuses what is no scatter', () => {
    const metres = scatterPosterior(prior, 0.3, 4);
    const centimetres = scatterPosterior({ s0: 50, factor: 2.5 }, 3000, 4);
    expect(centimetres.s / metres.s).toBeCloseTo(100, 6);
    for (const wrong of [
      () => scatterPosterior({ s0: 0, factor: 2 }, 1, 1),
      () => scatterPosterior({ s0: 1, factor: 1 }, 1, 1),
      () => scatterPosterior(prior, -1, 1),
      () => scatterPosterior(prior, 1, -1),
    ])
      expect(wrong).toThrow(OutOfRange);
  });
});
