import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../analysis/numbers/index.ts';
import { settledSpan } from '../../../../analysis/reductions/climb/settled-span.ts';

/** Two samples a second of an airspeed, climbing at 4 m/s. */
function flown(seconds: number, airspeed: (t: number) => number) {
  const t = Float64Array.from({ length: 2 * seconds + 1 }, (_, i) => i / 2);
  return { t, Hp: t.map((time) => 4 * time), ias: t.map(airspeed), airTemperature: t.map(() => 288), hold: 2 };
}

describe('where airspeed has settled', () => {
  it('is the whole climb where it was held throughout', () => {
    expect(
      settledSpan(
        flown(120, () => 40),
        45,
        5,
      ),
    ).toEqual({ from: 0, to: 120 });
  });

  it('begins once an approach is worth less than a quarter of a per cent of the climb', () => {
    const { from } = settledSpan(
      flown(120, (t) => 40 + 4 * Math.exp(-t / 10)),
      45,
      5,
    );
    // 0.3 m/s is left after 10 ln(4/0.3) = 26 s; what is held next lies a little above 40 m/s itself
    expect(from).toBeGreaterThan(18);
    expect(from).toBeLessThan(28);
  });

  it('is not taken in by an airspeed that passes through on its way', () => {
    const { from } = settledSpan(
      flown(150, (t) => 40 - 8 * Math.exp(-t / 12) * Math.cos(t / 6)),
      45,
      5,
    );
    expect(from).toBeGreaterThan(15);
    expect(from).toBeLessThan(45);
  });

  it('has begun where airspeed only wanders', () => {
    const random = seededRandom('wander');
    let gust = 0;
    const wandering = () => {
      gust += -gust / 20 + 0.12 * random.normal();
      return 40 + gust;
    };
    const { from } = settledSpan(flown(150, wandering), 45, 5);
    expect(from).toBeLessThan(25);
  });

  it('ends before a levelling off shows in airspeed, and looks back no further than the finder can be late', () => {
    const { to } = settledSpan(
      flown(120, (t) => 40 + 0.3 * Math.max(0, t - 114)),
      45,
      5,
    );
    expect(to).toBeLessThan(117);
    expect(to).toBeGreaterThanOrEqual(110);
  });

  it('leaves enough to measure where airspeed never settles', () => {
    expect(
      settledSpan(
        flown(100, (t) => 40 + t / 10),
        45,
        5,
      ).from,
    ).toBe(0);
  });
});
