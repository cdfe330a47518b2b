import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { stallSeries } from '../../../sample-tests/generate/stall-series.ts';

const series = stallSeries();
const rows = series
  .csv()
  .trimEnd()
  .split('\n')
  .slice(2)
  .map((line) => line.split(',').map(Number));

describe('stall series of the samples', () => {
  it('three configurations, four entries each, rates on both sides of 1 kt/s', () => {
    expect(series.truth.stalls.map((one) => one.configuration)).toEqual(['clean', 'take-off flap', 'landing']);
    for (const { configuration } of series.truth.stalls) {
      const rates = series.truth.runs
        .filter((r) => r.configuration === configuration)
        .map((r) => fromSi(r.entryRate, 'kt'));
      expect(rates).toHaveLength(4);
      expect(Math.min(...rates)).toBeLessThan(0.8);
      expect(Math.max(...rates)).toBeGreaterThan(1.3);
    }
  });

  it('the recorded speed falls at the stated rate to the stated break, half a second late', () => {
    for (const run of series.truth.runs) {
      const last = Math.round(run.breakSeconds * 5);
      const ias = rows.slice(last - 40, last + 1).map((row) => toSi(row[1] ?? Number.NaN, 'kt'));
      const middle = (ias.length - 1) / 2;
      const slope =
        ias.reduce((sum, v, k) => sum + v * (k - middle), 0) / ias.reduce((sum, _, k) => sum + (k - middle) ** 2, 0);
      const rate = -slope * 5;
      const atBreak = ias.reduce((sum, v) => sum + v, 0) / ias.length + slope * middle;
      expect(Math.abs(rate - run.entryRate)).toBeLessThan(toSi(0.06, 'kt'));
      const late = atBreak - run.iasAtBreak;
      // Lag of the line reads rate x 0.5 s high; the indicator's own error and noise come on top.
      expect(Math.abs(late - 0.5 * run.entryRate)).toBeLessThan(toSi(0.2, 'kt'));
    }
  });

  it('the normal acceleration drops after each break and not before', () => {
    for (const run of series.truth.runs) {
      const nz = (from: number, to: number) =>
        rows.slice(Math.round(from * 5), Math.round(to * 5)).map((row) => row[11] ?? Number.NaN);
      expect(Math.min(...nz(run.fromSeconds, run.breakSeconds))).toBeGreaterThan(0.93);
      expect(Math.min(...nz(run.breakSeconds, run.breakSeconds + 1.4))).toBeLessThan(0.75);
    }
  });

  it('stays above the floor the pilot set', () => {
    expect(Math.min(...series.states.map((s) => s.height))).toBeGreaterThan(toSi(4000, 'ft'));
  });
});
