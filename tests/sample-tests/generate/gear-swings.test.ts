import { describe, expect, it } from 'vitest';
import { gearSwings } from '../../../sample-tests/generate/gear-swings.ts';

const swings = gearSwings();
const rows = swings.csv
  .trimEnd()
  .split('\n')
  .slice(3)
  .map((line) => line.split(',').map(Number));

describe('gear swings of the samples', () => {
  it('twelve swings near the design times; swing 9 waits for the left leg’s down switch', () => {
    const { cycles, lateCycle, lateBy } = swings.truth;
    expect(cycles).toHaveLength(12);
    cycles.forEach(({ up, down }, i) => {
      expect(Math.abs(up.transit - 9)).toBeLessThan(0.6);
      expect(Math.abs(down.transit - 7 - (i + 1 === lateCycle ? lateBy : 0))).toBeLessThan(0.7);
      expect(up.peakCurrent).toBeLessThan(60);
    });
    expect(cycles.findIndex(({ down }) => down.left - down.right > 1)).toBe(8);
  });

  it('the switches in the file make within one sample of the stated times', () => {
    const legs = [
      ['nose', 5],
      ['left', 7],
      ['right', 9],
    ] as const;
    for (const { up, down } of swings.truth.cycles) {
      for (const [leg, column] of legs) {
        for (const [way, offset] of [
          [up, 0],
          [down, 1],
        ] as const) {
          const made = rows.find((row) => (row[0] ?? 0) > way.fromSeconds + 1 && row[column + offset] === 1);
          const seen = (made?.[0] ?? 0) - way.fromSeconds;
          expect(seen).toBeGreaterThanOrEqual(way[leg] - 1e-6);
          expect(seen).toBeLessThanOrEqual(way[leg] + 0.2 + 1e-6);
        }
      }
    }
  });

  it('charge of a swing is the area under the recorded current, within its noise', () => {
    for (const { up } of swings.truth.cycles) {
      const area = rows
        .filter((row) => (row[0] ?? 0) >= up.fromSeconds && (row[0] ?? 0) < up.fromSeconds + up.transit + 2)
        .reduce((sum, row) => sum + (row[1] ?? 0) * 0.2, 0);
      expect(Math.abs(area / up.charge - 1)).toBeLessThan(0.01);
    }
  });
});
