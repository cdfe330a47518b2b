/** The demo's ground runs against the truth they were made from, and two hundred more with other noise. */
import { describe, expect, it } from 'vitest';
import { coolingGround } from '../../../../analysis/reductions/cooling-ground/index.ts';
import type { Result } from '../../../../analysis/results/index.ts';
import { type GroundRun, groundRun } from '../../../../sample-tests/generate/ground-run.ts';
import { airplaneWith } from '../../../blind/cooling-days.ts';
import { monitorRecording } from '../../../blind/monitor-recording.ts';
import { rowsNamed } from './table-rows.ts';

const ouzel = airplaneWith('ouzel');
const reduced = (run: GroundRun): Result =>
  coolingGround.reduce({ recording: monitorRecording(run.columns, run.rows), airplane: ouzel });

/** Given equilibria beside the fully open steady state of the condition they lie in. */
function pairsOf(run: GroundRun, result: Result) {
  return rowsNamed(result, 'segments')
    .filter((row) => typeof row.equilibrium === 'number')
    .map((row) => {
      const middle = (Number(row['from-seconds']) + Number(row['to-seconds'])) / 2;
      const truth = run.truth.segments.find((one) => one.fromSeconds <= middle && middle < one.toSeconds);
      if (!truth) throw new Error('a row outside the run');
      return { row, truth, error: Number(row.equilibrium) - (truth.equilibriumThermostatOpen ?? Number.NaN) };
    });
}

describe.each([1, 2] as const)('ground-run-%i of the demo', (story) => {
  const run = groundRun({ story });
  const result = reduced(run);
  const pairs = pairsOf(run, result);

  it('finds the equilibria within 1 K, and every one inside U95', () => {
    expect(pairs.length).toBeGreaterThanOrEqual(story === 1 ? 2 : 4);
    for (const { row, error } of pairs) {
      expect(Math.abs(error), String(row.label)).toBeLessThan(1);
      expect(Math.abs(error), String(row.label)).toBeLessThanOrEqual(Number(row['equilibrium-u95']));
    }
  });

  it('puts each row inside one condition of the story, with its regime', () => {
    for (const row of rowsNamed(result, 'segments')) {
      const inside = run.truth.segments.find(
        (one) => one.fromSeconds <= Number(row['from-seconds']) && Number(row['to-seconds']) <= one.toSeconds,
      );
      expect(inside, String(row.label)).toBeDefined();
      if (inside && row.regime !== 'regulated' && row.regime !== 'warming') expect(row.regime).toBe(inside.regime);
      expect(Math.abs(Number(row['engine-speed']) - (inside?.engineSpeed ?? 0))).toBeLessThan(0.01 * 50);
      expect(row.fan).toBe(inside?.fan);
    }
  });

  it('gives a bound and no value to what was stopped short', () => {
    const short = rowsNamed(result, 'segments').filter(
      (row) => row.regime === 'fully-open' && Number(row['to-seconds']) - Number(row['from-seconds']) < 200,
    );
    expect(short.length).toBeGreaterThan(0);
    for (const row of short) {
      expect(row.equilibrium).toBeNull();
      expect(row['time-constant']).toBeNull();
      const span = { fromSeconds: row['from-seconds'] };
      expect(result.flags.some((one) => one.kind === 'bound-only' && one.fromSeconds === span.fromSeconds)).toBe(true);
    }
  });

  it('gives no margin where the thermostat regulated, and says what is in hand', () => {
    const regulated = rowsNamed(result, 'segments').filter((row) => row.regime === 'regulated');
    expect(regulated.length).toBeGreaterThan(0);
    for (const row of regulated) expect(row.equilibrium).toBeNull();
    const withheld = result.quantities.filter(
      (one) => one.name === 'hot-day-margin' && one.flags.some(({ kind }) => kind === 'regulated'),
    );
    expect(withheld.length).toBe(regulated.length);
    for (const one of withheld) expect(one.value).toBeNull();
    expect(rowsNamed(result, 'authority').length).toBe(regulated.length);
  });

  it('reads the soak: peak and time to a restart inside their U95', () => {
    const of = (name: string) => result.quantities.find((one) => one.name === name);
    const peak = of('peak-after-shutdown');
    const restart = of('time-to-restart-temperature');
    expect(Math.abs((peak?.value ?? 0) - run.truth.peakAfterShutdown)).toBeLessThanOrEqual(peak?.u95 ?? 0);
    expect(Math.abs((restart?.value ?? 0) - (run.truth.timeToRestart ?? 0))).toBeLessThanOrEqual(restart?.u95 ?? 0);
  });
});

describe('two hundred regenerations with other noise and other sensor errors', () => {
  it('hold 93 to 97 % of the true equilibria inside U95', () => {
    const seeds = Array.from({ length: 100 }, (_, i) => 1000 + i);
    const runs = seeds.flatMap((seed) => ([1, 2] as const).map((story) => groundRun({ story, seed })));
    const pairs = runs.flatMap((run) => pairsOf(run, reduced(run)));
    const inside = pairs.filter(({ row, error }) => Math.abs(error) <= Number(row['equilibrium-u95'])).length;
    const share = inside / pairs.length;
    const rms = Math.sqrt(pairs.reduce((sum, { error }) => sum + error ** 2, 0) / pairs.length);
    const half = pairs.reduce((sum, { row }) => sum + Number(row['equilibrium-u95']), 0) / pairs.length;
    console.log(
      `ground cooling, ${runs.length} runs: ${(100 * share).toFixed(1)} % of ${pairs.length} equilibria inside U95 (${half.toFixed(2)} K on average), error ${rms.toFixed(2)} K rms`,
    );
    expect(pairs.length).toBeGreaterThan(400);
    expect(share).toBeGreaterThanOrEqual(0.93);
    expect(share).toBeLessThanOrEqual(0.97);
  }, 120_000);
});
