/** A weighing: what cancels, what does not, and 600 simulated weighings of a known airplane. */
import { describe, expect, it } from 'vitest';
import { weigh } from '../../../analysis/models/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';
import { gaussian, seeded } from '../program/random-airplane.ts';

const NONE = { scaleU95: 0, gainU95: 0, levelU95: 0, heightOfCg: 0.5, loneRun: 0 };
const wheels = (readings: readonly [number[], number[], number[]], armU95 = 0) => [
  { place: 'nose', readings: readings[0], arm: 1.1, armU95 },
  { place: 'left', readings: readings[1], arm: 2.7, armU95 },
  { place: 'right', readings: readings[2], arm: 2.7, armU95 },
];

describe('a weighing', () => {
  it('leaves the centre of gravity alone when all readings share a gain error', () => {
    const one = weigh(wheels([[160], [290], [292]]), NONE);
    const other = weigh(wheels([[160 * 1.01], [290 * 1.01], [292 * 1.01]]), NONE);
    expect(other.arm.value).toBeCloseTo(one.arm.value, 12);
    expect(other.mass.value / one.mass.value).toBeCloseTo(1.01, 12);
  });

  it('carries a gain error into the mass only, and a level error into the arm only', () => {
    const gain = weigh(wheels([[160], [290], [292]]), { ...NONE, gainU95: 0.002 });
    expect(gain.mass.u95).toBeCloseTo(0.002 * 742, 6);
    expect(gain.arm.u95).toBe(0);
    const level = weigh(wheels([[160], [290], [292]]), { ...NONE, levelU95: 0.01 });
    expect(level.mass.u95).toBe(0);
    // 0.5 m x tan 0.01
    expect(level.arm.u95).toBeCloseTo(0.005, 4);
  });

  it('refuses when nothing was weighed', () => {
    expect(() => weigh([], NONE)).toThrow(OutOfRange);
    expect(() => weigh(wheels([[0], [0], [0]]), NONE)).toThrow(OutOfRange);
  });

  it('covers the truth in 93 to 98 % of 600 simulated weighings of three runs', () => {
    const random = seeded(313);
    const truth = { mass: 742, arm: 2.34 };
    const [nose, main] = [(742 * (2.7 - 2.34)) / 1.6, 742 - (742 * (2.7 - 2.34)) / 1.6];
    const doubts = { scaleU95: 0.6, gainU95: 0, levelU95: 0.004, heightOfCg: 0.5, loneRun: 0.001 };
    let [mass, arm] = [0, 0];
    for (let run = 0; run < 600; run += 1) {
      const scale = [0, 1, 2].map(() => (0.6 / 1.96) * gaussian(random));
      const shift = 0.5 * Math.tan((0.004 / 1.96) * gaussian(random));
      const arms = [1.1, 2.7, 2.7].map((one) => one + (0.003 / 1.96) * gaussian(random));
      const loads = [nose, main / 2, main / 2];
      const readings = loads.map((load, i) =>
        [0, 1, 2].map(() => Math.round((load + (scale[i] ?? 0) + 0.4 * gaussian(random)) / 0.2) * 0.2),
      );
      const measured = weigh(
        readings.map((list, i) => ({ place: `${i}`, readings: list, arm: (arms[i] ?? 0) + shift, armU95: 0.003 })),
        doubts,
      );
      if (Math.abs(measured.mass.value - truth.mass) <= measured.mass.u95) mass += 1;
      if (Math.abs(measured.arm.value - truth.arm) <= measured.arm.u95) arm += 1;
    }
    console.log(`weighing, 600 runs: mass inside ${(mass / 6).toFixed(1)} %, arm inside ${(arm / 6).toFixed(1)} %`);
    for (const share of [mass / 600, arm / 600]) {
      expect(share).toBeGreaterThanOrEqual(0.93);
      expect(share).toBeLessThanOrEqual(0.98);
    }
  });
});
