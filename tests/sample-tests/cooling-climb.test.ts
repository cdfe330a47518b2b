/** The demo's cooling climb, two recorders, through the command: against the truth it was made from. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { resultSchema } from '../../analysis/results/index.ts';
import { runCommand } from '../server/command/run-command.ts';

const LOGS = 'sample-tests/ouzel/logs';
const truth = JSON.parse(readFileSync('sample-tests/ouzel/truth.json', 'utf8')).logs['climb-gps + climb-monitor']
  .cooling;

describe('cooling climb of the demo', () => {
  it('finds the one climb, aligns the recorders, and holds both peaks inside their uncertainty', async () => {
    const { code, json } = await runCommand([
      'reduce',
      'cooling-climb',
      `${LOGS}/climb-gps.csv`,
      `${LOGS}/climb-monitor.csv`,
      '--airplane',
      'sample-tests/ouzel/airplane.json',
      '--json',
    ]);
    expect(code).toBe(0);
    const result = resultSchema.parse(json());
    const [climb, ...others] = result.segments;
    expect(others).toEqual([]);
    expect(Math.abs((climb?.fromSeconds ?? 0) - truth.fromSeconds.value)).toBeLessThan(15);
    expect(Math.abs((climb?.toSeconds ?? 0) - truth.toSeconds.value)).toBeLessThan(20);
    const peaks = result.tables.find((one) => one.name === 'peaks');
    const cell = (channel: string, column: string) =>
      Number(peaks?.rows.find((row) => row[0] === channel)?.[peaks.columns.findIndex((one) => one.name === column)]);
    expect(peaks?.rows.map((row) => row[0])).toEqual(['coolant-temperature', 'oil-temperature']);
    const coolant = cell('coolant-temperature', 'peak') - truth.coolantPeak.value;
    expect(Math.abs(coolant)).toBeLessThan(0.6);
    expect(Math.abs(coolant)).toBeLessThanOrEqual(cell('coolant-temperature', 'peak-u95'));
    expect(Math.abs(cell('coolant-temperature', 'air') - truth.airAtPeak.value)).toBeLessThan(0.6);
    expect(Math.abs(cell('coolant-temperature', 'peak-seconds') - truth.coolantPeakSeconds.value)).toBeLessThan(20);
    expect(Math.abs(cell('oil-temperature', 'peak') - truth.oilPeak.value)).toBeLessThanOrEqual(
      cell('oil-temperature', 'peak-u95'),
    );
    // 112 degC less the corrected peak, and not enough of it is left to be shown
    expect(cell('coolant-temperature', 'margin')).toBeCloseTo(
      cell('coolant-temperature', 'limit') - cell('coolant-temperature', 'corrected'),
      6,
    );
    expect(result.comparisons.find((one) => one.what.startsWith('coolant'))?.outcome).toBe('not shown');
    expect(result.comparisons.find((one) => one.what.startsWith('oil'))?.outcome).toBe('shown');
    expect(result.provenance.files).toHaveLength(2);
  });
});
