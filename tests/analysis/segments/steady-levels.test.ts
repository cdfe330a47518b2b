import { describe, expect, it } from 'vitest';
import { type Random, seededRandom } from '../../../analysis/numbers/index.ts';
import { type SettingWords, steadyLevels } from '../../../analysis/segments/index.ts';

/** Engine speed in rpm for readability; the finder does not care. */
const SPEED: SettingWords = {
  tolerance: (level) => Math.max(15, 0.01 * level),
  wander: (level) => 0.007 * level,
  wanderSeconds: 20,
  bridgeSeconds: 15,
  unrest: (level) => Math.max(40, 0.03 * level),
};

type Part = [level: number, seconds: number, rampSeconds?: number];

function trace(parts: Part[], dt: number, add: (i: number) => number): Float64Array {
  const out: number[] = [];
  let before = parts[0]?.[0] ?? 0;
  for (const [level, seconds, ramp = 0] of parts) {
    for (let t = 0; t < seconds; t += dt) {
      const share = ramp > 0 ? Math.min(1, t / ramp) : 1;
      out.push(before + share * (level - before));
    }
    before = level;
  }
  return Float64Array.from(out, (value, i) => value + add(i));
}

const levelsOf = (found: { level: number }[]) => found.map(({ level }) => Math.round(level / 10) * 10);
const longOnes = (found: { from: number; to: number; level: number }[], dt: number) =>
  found.filter(({ from, to }) => (to - from) * dt >= 45);

function wandering(random: Random, size: number, seconds: number, dt: number) {
  const keep = Math.exp(-dt / seconds);
  let x = 0;
  return () => {
    x = keep * x + size * Math.sqrt(1 - keep * keep) * random.normal();
    return x;
  };
}

const HOLDS: Part[] = [
  [1400, 240],
  [1800, 300, 4],
  [2500, 600, 6],
  [3200, 200, 8],
  [1400, 90, 3],
];

describe('steady levels', () => {
  it.each([
    ['clean', 1, 0, 0],
    ['noise of 15 rpm', 1, 15, 0],
    ['noise of 80 rpm', 1, 80, 0],
    ['wander of 0.7 % over 20 s', 1, 10, 0.007],
    ['5 Hz with noise of 40 rpm', 0.2, 40, 0],
    ['one reading in 2 s', 2, 15, 0],
  ])('finds the five holds, once each: %s', (_, dt, white, wander) => {
    for (let seed = 0; seed < 25; seed += 1) {
      const random = seededRandom(`${seed}`);
      const slow = wandering(random, wander, 20, dt);
      const still = trace(HOLDS, dt, () => 0);
      const v = still.map((rpm) => 10 * Math.round((rpm * (1 + slow()) + white * random.normal()) / 10));
      const found = longOnes(steadyLevels(v, dt, SPEED), dt);
      expect(found.length, `seed ${seed}: ${levelsOf(found)}`).toBe(5);
      HOLDS.forEach(([level], i) => {
        expect(Math.abs((found[i]?.level ?? 0) - level) / level).toBeLessThan(0.02); // a 90 s hold under 80 rpm of noise: its mean is good to 0.6 %
      });
      const starts = [0, 240, 540, 1140, 1340];
      const ramps = [0, 4, 6, 8, 3];
      starts.forEach((start, i) => {
        const seen = (found[i]?.from ?? 0) * dt;
        // no earlier than the move has begun, less a bin when the noise hides it; no later than 12 s after it ended
        expect(seen).toBeGreaterThanOrEqual(start - 6);
        expect(seen).toBeLessThanOrEqual(start + (ramps[i] ?? 0) + 12);
      });
    }
  });

  it('sees a step of 60 rpm that lasts, and ignores one of 10', () => {
    const random = seededRandom(9);
    const noise = () => 15 * random.normal();
    const step = trace(
      [
        [2500, 300],
        [2560, 300],
      ],
      1,
      noise,
    ); // prettier-ignore
    const tiny = trace(
      [
        [2500, 300],
        [2510, 300],
      ],
      1,
      noise,
    ); // prettier-ignore
    expect(levelsOf(steadyLevels(step, 1, SPEED))).toEqual([2500, 2560]);
    expect(steadyLevels(tiny, 1, SPEED).length).toBe(1);
  });

  it('bridges a glitch and a short blip back to the same level, not a longer one', () => {
    const quiet = () => 0;
    const glitch = trace(
      [
        [2500, 200],
        [0, 3],
        [2500, 200],
      ],
      1,
      quiet,
    ); // prettier-ignore
    const blip = trace(
      [
        [2500, 200],
        [2300, 12],
        [2500, 200],
      ],
      1,
      quiet,
    ); // prettier-ignore
    const longer = trace(
      [
        [2500, 200],
        [2300, 40],
        [2500, 200],
      ],
      1,
      quiet,
    ); // prettier-ignore
    expect(steadyLevels(glitch, 1, SPEED).length).toBe(1);
    expect(steadyLevels(blip, 1, SPEED).length).toBe(1);
    expect(levelsOf(steadyLevels(longer, 1, SPEED))).toEqual([2500, 2300, 2500]);
  });

  it('never joins across missing readings, and has nothing to say of an empty channel', () => {
    const v = trace([[2500, 200]], 1, () => 0); // prettier-ignore
    v.fill(Number.NaN, 80, 120);
    expect(steadyLevels(v, 1, SPEED).map(({ from, to }) => [from, to])).toEqual([
      [0, 79],
      [120, 199],
    ]);
    expect(steadyLevels(new Float64Array(), 1, SPEED)).toEqual([]);
    expect(steadyLevels(Float64Array.of(Number.NaN, Number.NaN), 1, SPEED)).toEqual([]);
  });

  it('calls a throttle that keeps moving no level, however even its swings', () => {
    for (const period of [40, 60, 120]) {
      const taxi = Float64Array.from({ length: 900 }, (_, i) => 1800 + 700 * Math.sin((2 * Math.PI * i) / period));
      expect(steadyLevels(taxi, 1, SPEED).filter(({ from, to }) => to - from >= 60)).toEqual([]);
    }
  });

  it('reads a switch: 0 and 1', () => {
    const FAN: SettingWords = {
      tolerance: () => 0.3,
      wander: () => 0,
      wanderSeconds: 0,
      bridgeSeconds: 3,
      unrest: () => 0.3,
    };
    const v = trace(
      [
        [0, 100],
        [1, 51],
        [0, 100],
      ],
      1,
      () => 0,
    ); // prettier-ignore
    expect(steadyLevels(v, 1, FAN).map(({ from, to, level }) => [from, to, level])).toEqual([
      [0, 99, 0],
      [100, 150, 1],
      [151, 250, 0],
    ]);
  });
});
