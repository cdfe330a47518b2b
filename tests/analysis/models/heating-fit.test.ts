import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitHeating, type HeatingFit, type HeldRecord, noiseHalf } from '../../../analysis/models/index.ts';
import { seededRandom } from '../../../analysis/numbers/index.ts';

interface Course {
  start: number;
  excess: number;
  tau: number;
  seconds: number;
  dt?: number;
  air?: (t: number) => number;
  noise?: number;
  step?: number;
  seed?: number;
}

/** Integrated in small steps, so that nothing rests on the closed solution under test. */
function record({
  start,
  excess,
  tau,
  seconds,
  dt = 1,
  air = () => 290,
  noise = 0,
  step = 0,
  seed = 1,
}: Course): HeldRecord {
  const n = Math.floor(seconds / dt) + 1;
  const random = seededRandom(seed);
  const hot = new Float64Array(n);
  const airs = Float64Array.from({ length: n }, (_, i) => air(i * dt));
  let T = start;
  for (let i = 0; i < n; i += 1) {
    const noisy = T + noise * random.normal();
    hot[i] = step > 0 ? Math.round(noisy / step) * step : noisy;
    for (let k = 0; k < 100; k += 1) {
      const t = (i + (k + 0.5) / 100) * dt;
      T += ((dt / 100) * (air(t) + excess - T)) / tau;
    }
  }
  return { dt, hot, air: airs, step, perSample: 1 };
}

function fitted(course: Course): HeatingFit {
  const fit = fitHeating(record(course));
  if (!fit) throw new Error('no fit');
  return fit;
}

describe('a heating curve without noise', () => {
  it('gives back what it was made from, in steady air, in a ramp, in air that swings', () => {
    const airs = [() => 290, (t: number) => 288 + 0.004 * t, (t: number) => 290 + 1.5 * Math.sin(t / 150)];
    for (const air of airs) {
      for (const tau of [120, 300, 700]) {
        const fit = fitted({ start: 355, excess: 82, tau, seconds: 3 * tau, air });
        expect(Math.abs(fit.excess - 82)).toBeLessThan(0.05);
        expect(Math.abs(fit.tau / tau - 1)).toBeLessThan(0.01);
        expect(Math.abs(fit.start - 355)).toBeLessThan(0.05);
      }
    }
  });

  it('works for a temperature that falls, and for readings a minute apart', () => {
    const falling = fitted({ start: 385, excess: 75, tau: 250, seconds: 900 });
    expect(Math.abs(falling.excess - 75)).toBeLessThan(0.05);
    const written = fitted({ start: 330, excess: 160, tau: 240, seconds: 900, dt: 60 });
    expect(Math.abs(written.excess - 160)).toBeLessThan(0.5);
  });

  it('refuses what holds too few readings', () => {
    const few = record({ start: 350, excess: 80, tau: 300, seconds: 4 });
    expect(fitHeating(few)).toBeNull();
    const gap = record({ start: 350, excess: 80, tau: 300, seconds: 300 });
    gap.hot.fill(Number.NaN);
    expect(fitHeating(gap)).toBeNull();
  });
});

describe('what must not matter', () => {
  it('a shift of air and temperature alike moves nothing but the level', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), fc.integer({ min: 1, max: 500 }), (shift, seed) => {
        const base = record({ start: 355, excess: 80, tau: 280, seconds: 700, noise: 0.3, seed });
        const moved = { ...base, hot: base.hot.map((T) => T + shift), air: base.air.map((T) => T + shift) };
        const [a, b] = [fitHeating(base), fitHeating(moved)];
        expect(b?.excess).toBeCloseTo(a?.excess ?? 0, 5);
        expect(b?.tau).toBeCloseTo(a?.tau ?? 0, 2);
      }),
      { numRuns: 25 },
    );
  });

  it('missing readings cost width, not truth', () => {
    const full = record({ start: 355, excess: 80, tau: 280, seconds: 900, noise: 0.2 });
    const holes = { ...full, hot: full.hot.map((T, i) => (i % 7 < 2 || (i > 300 && i < 340) ? Number.NaN : T)) };
    const fit = fitHeating(holes);
    expect(Math.abs((fit?.excess ?? 0) - 80)).toBeLessThan(0.5);
  });
});

describe('the kept set', () => {
  it('agrees with a brute-force search of every start, D and time constant', () => {
    const one = record({ start: 357, excess: 80, tau: 280, seconds: 560, noise: 0.3, seed: 5 });
    const fit = fitHeating(one);
    if (!fit) throw new Error('no fit');
    const misfit = (start: number, excess: number, tau: number) =>
      one.hot.reduce((sum, T, i) => sum + (T - (290 + excess + (start - 290 - excess) * Math.exp(-i / tau))) ** 2, 0);
    let best = { excess: 0, rss: Number.POSITIVE_INFINITY };
    for (let tau = 150; tau <= 500; tau += 10) {
      for (let excess = 77; excess <= 84; excess += 0.1) {
        for (let start = 356; start <= 358; start += 0.2) {
          const rss = misfit(start, excess, tau);
          if (rss < best.rss) best = { excess, rss };
        }
      }
    }
    // the search steps by 0.1 K and 10 s, which moves D by up to 0.2 K along the valley
    expect(Math.abs(fit.excess - best.excess)).toBeLessThan(0.25);
    expect(misfit(fit.start, fit.excess, fit.tau)).toBeLessThan(1.01 * best.rss);
  });

  it('narrows as the run lengthens, and is open above while it is short', () => {
    const half = (lengths: number) =>
      noiseHalf(fitted({ start: 335, excess: 80, tau: 300, seconds: 300 * lengths, noise: 0.3 }));
    const widths = [0.75, 1, 1.5, 2, 3].map(half);
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(fitted({ start: 335, excess: 80, tau: 300, seconds: 120, noise: 0.4 }).tauHigh).toBeNull();
  });

  it('scales with the noise', () => {
    const half = (noise: number) =>
      noiseHalf(fitted({ start: 335, excess: 80, tau: 300, seconds: 900, noise, seed: 3 }));
    expect(half(0.4) / half(0.2)).toBeGreaterThan(1.7);
    expect(half(0.4) / half(0.2)).toBeLessThan(2.4);
  });

  it('borrows a time constant where it has none of its own, and only then', () => {
    const flat = fitted({ start: 368.5, excess: 80, tau: 280, seconds: 600, noise: 0.4, seed: 2 });
    const known = flat.again({ tau: 280, factor: 2 });
    expect(noiseHalf(known)).toBeLessThan(noiseHalf(flat));
    const sharp = fitted({ start: 335, excess: 80, tau: 280, seconds: 1200, noise: 0.2, seed: 2 });
    expect(Math.abs(sharp.again({ tau: 400, factor: 2 }).excess - sharp.excess)).toBeLessThan(0.05);
  });

  it('carries a step nothing dithers as an error that does not average', () => {
    const still = fitted({ start: 369.8, excess: 80, tau: 280, seconds: 900, noise: 0.02, step: 1 });
    const ramp = fitted({ start: 335, excess: 80, tau: 280, seconds: 500, noise: 0.02, step: 1 });
    expect(still.stepBias).toBeCloseTo(1 / Math.sqrt(12), 9);
    expect(ramp.stepBias).toBe(0);
  });
});
