import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../analysis/numbers/index.ts';
import { resultSchema } from '../../../../analysis/results/index.ts';
import {
  climbCard,
  columnIn,
  constantPower,
  exactAirplane,
  KNOT,
  kindsOf,
  MIDDLE,
  parabola,
  quantityIn,
  reduce,
  standardRate,
  trueOptima,
} from './flown.ts';

const SPEEDS = [28, 33, 38, 43, 48, 53];
const fixed = exactAirplane({ propeller: { kind: 'fixed' } });
const constantSpeed = exactAirplane();

describe('best speeds from a card', () => {
  it.each([
    ['constant-speed propeller', constantSpeed, constantPower, SPEEDS],
    ['fixed propeller', fixed, parabola, [24, 28, 33, 38, 43, 48, 53]],
  ])('%s: best rate where the law has it', (_, airplane, law, speeds) => {
    const result = reduce({ points: climbCard({ speeds, law }), airplane });
    expect(resultSchema.safeParse(JSON.parse(JSON.stringify(result))).success).toBe(true);
    const best = quantityIn(result, 'best-rate-speed');
    const { Vy } = trueOptima(law);
    expect(Math.abs((best.value ?? 0) - Vy)).toBeLessThan(0.5 * KNOT);
    expect(Math.abs((best.value ?? 0) - Vy)).toBeLessThanOrEqual(best.u95 ?? 0);
    const rate = quantityIn(result, 'best-rate');
    expect(rate.value).toBeCloseTo(standardRate(law, Vy), 1);
  });

  it('best angle where speeds on both sides of it were flown, and not where they were not', () => {
    const law = (V: number) => 6 - 0.006 * (V - 40) ** 2;
    const { Vx } = trueOptima(law);
    const wide = quantityIn(
      reduce({ points: climbCard({ speeds: [16, 22, 28, 34, 40, 46, 52], law }), airplane: fixed }),
      'best-angle-speed',
    );
    expect(Math.abs((wide.value ?? 0) - Vx)).toBeLessThanOrEqual(wide.u95 ?? 0);
    const narrow = quantityIn(
      reduce({ points: climbCard({ speeds: [33, 37, 41, 45, 49], law }), airplane: fixed }),
      'best-angle-speed',
    );
    expect(narrow.value).toBeNull();
    expect(narrow.flags.map((one) => one.kind)).toEqual(['not-bracketed']);
  });

  it('no number where the optimum lies outside the speeds flown', () => {
    const result = reduce({ points: climbCard({ speeds: [45, 48, 51, 54, 57] }), airplane: constantSpeed });
    const best = quantityIn(result, 'best-rate-speed');
    expect(best).toMatchObject({ value: null, u95: null });
    expect(best.flags[0]?.kind).toBe('not-bracketed');
    expect(best.flags[0]?.message).toContain('below the slowest');
  });

  it('rows hold the standard rate of the law, at the density altitude flown', () => {
    const result = reduce({ points: climbCard({ speeds: SPEEDS }), airplane: constantSpeed });
    columnIn(result, 'climbs', 'rate-standard').forEach((rate, i) => {
      expect(rate).toBeCloseTo(standardRate(constantPower, SPEEDS[Math.floor(i / 2)] ?? 0), 6);
    });
    for (const Hd of columnIn(result, 'climbs', 'density-altitude')) expect(Hd).toBeCloseTo(MIDDLE, 0);
    expect(kindsOf(result)).not.toContain('lone-run');
    expect(kindsOf(result)).toContain('assumed-value'); // no accepted calibration
  });

  it('two bands give ceilings, named extrapolations; one band gives the reason why not', () => {
    const law = (V: number) => constantPower(V) - 1.2;
    const low = climbCard({ speeds: SPEEDS });
    const high = climbCard({ speeds: SPEEDS, height: 2200, law });
    const both = reduce({ points: { ...low, points: [...low.points, ...high.points] }, airplane: constantSpeed });
    const service = quantityIn(both, 'service-ceiling');
    expect(service.flags.map((one) => one.kind)).toEqual([service.value === null ? 'not-resolved' : 'extrapolated']);
    const one = quantityIn(reduce({ points: low, airplane: constantSpeed }), 'absolute-ceiling');
    expect(one).toMatchObject({ value: null, u95: null });
    expect(one.flags[0]?.message).toContain('one density-altitude band');
  });
});

describe('coverage', () => {
  it('five speeds twice with 0.1 m/s between climbs: the best speed lies inside its interval 19 times in 20', () => {
    const { Vy } = trueOptima(constantPower);
    let [inside, given] = [0, 0];
    for (let seed = 0; seed < 40; seed += 1) {
      const random = seededRandom(`climb coverage ${seed}`);
      const points = climbCard({ speeds: [28, 34, 40, 46, 52], scatter: 0.1, random });
      const best = quantityIn(reduce({ points, airplane: constantSpeed }), 'best-rate-speed');
      if (best.value === null) continue;
      const [low, high] = best.interval ?? [null, null];
      given += 1;
      if ((low ?? 0) <= Vy && Vy <= (high ?? 0)) inside += 1;
    }
    expect(given).toBeGreaterThanOrEqual(32);
    expect(inside / given).toBeGreaterThanOrEqual(0.88);
  });
});
