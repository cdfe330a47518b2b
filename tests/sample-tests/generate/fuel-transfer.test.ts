import { describe, expect, it } from 'vitest';
import { toSi } from '../../../analysis/units/index.ts';
import { fuelTransfer } from '../../../sample-tests/generate/fuel-transfer.ts';

describe('fuel transfer of the samples', () => {
  const { csv, truth } = fuelTransfer();

  it('no fuel is made or lost: what leaves the aft tank reaches the left one or is burnt', () => {
    const rows = csv
      .trimEnd()
      .split('\n')
      .slice(4)
      .map((line) => line.split(',').slice(2).map(Number));
    const burnt = rows.reduce((sum, row) => sum + toSi(row[3] ?? 0, 'L/h'), 0);
    const change = (tank: { startVolume: number; endVolume: number }) => tank.endVolume - tank.startVolume;
    const total = change(truth.left) + change(truth.right) + change(truth.aft);
    // Recorded flow is rounded to 0.1 L/h and carries noise; over 1500 s that is hundredths of a litre.
    expect(Math.abs(total + burnt)).toBeLessThan(toSi(0.05, 'L'));
    expect(truth.left.endVolume).toBeLessThan(toSi(58, 'L'));
  });

  it('without noise the aft sender falls at the stated flow until the pump draws air', () => {
    const still = fuelTransfer({ noise: 0 });
    const aft = still.csv
      .trimEnd()
      .split('\n')
      .slice(4)
      .map((line) => Number(line.split(',')[4]));
    const [from, to] = [still.truth.pumpOnSeconds + 60, still.truth.drawsAirSeconds - 60];
    const slope = toSi((aft[from] ?? 0) - (aft[to] ?? 0), 'L') / (to - from);
    expect(Math.abs(slope / still.truth.transferFlow - 1)).toBeLessThan(0.02);
    expect(still.truth.remainder).toBeLessThan(still.truth.volumeWhenAirDrawn);
  });
});
