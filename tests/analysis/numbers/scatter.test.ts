import { describe, expect, it } from 'vitest';
import {
  median,
  quantile,
  quantileOfSorted,
  quantisationStep,
  scatterWithPrior,
  seededRandom,
  stepEffect,
} from '../../../analysis/numbers/index.ts';

describe('prior on run-to-run scatter', () => {
  const prior = { s0: 1.5, nu0: 4 };

  it('is the prior alone without runs, the runs alone with ten degrees of freedom', () => {
    expect(scatterWithPrior(prior, 0, 0)).toEqual({ s: 1.5, nu: 4, priorUsed: true, assumed: true });
    expect(scatterWithPrior(prior, 40, 10)).toEqual({ s: 2, nu: 10, priorUsed: false, assumed: false });
  });

  it('weighs both in between and stops counting as assumed at four', () => {
    const some = scatterWithPrior(prior, 5, 5);
    expect(some.s).toBeCloseTo(Math.sqrt((4 * 2.25 + 5) / 9), 12);
    expect(some).toMatchObject({ nu: 9, priorUsed: true, assumed: false });
    expect(scatterWithPrior(prior, 5, 3).assumed).toBe(true);
  });
});

describe('recording step', () => {
  it('is found through a conversion of unit, through gaps in the values, and not in a fine channel', () => {
    const random = seededRandom(2);
    const fahrenheit = Array.from({ length: 300 }, () => (Math.round(190 + 9 * random.normal()) + 459.67) / 1.8);
    expect(quantisationStep(fahrenheit)).toBeCloseTo(1 / 1.8, 5);
    expect(quantisationStep([290, 292, 295, Number.NaN])).toBeCloseTo(1, 5);
    expect(quantisationStep([2e-5, 2.2e-5, 2.4e-5, 3e-5])).toBeCloseTo(2e-6, 11);
    expect(quantisationStep(Array.from({ length: 3000 }, () => random.normal()))).toBe(0);
    expect(quantisationStep([300, 300])).toBe(0);
  });

  it('is noise where dithered, a bias where not', () => {
    expect(stepEffect(0.5, 1)).toEqual({ perSample: 1 / 12, bias: 0 });
    expect(stepEffect(0.1, 1)).toEqual({ perSample: 0, bias: 1 / Math.sqrt(12) });
    expect(stepEffect(0, 0)).toEqual({ perSample: 0, bias: 0 });
  });
});

describe('quantiles', () => {
  it('interpolate, leave out NaN, and pass infinity through', () => {
    expect(quantile([3, 1, Number.NaN, 2], 0.5)).toBe(2);
    expect(median([1, 2, 3, 4])).toBe(2.5);
    expect(quantileOfSorted([1, 2, Number.POSITIVE_INFINITY], 0.9)).toBe(Number.POSITIVE_INFINITY);
    expect(quantileOfSorted([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY], 0.3)).toBe(Number.POSITIVE_INFINITY);
    expect(quantile([], 0.5)).toBeNaN();
  });
});
