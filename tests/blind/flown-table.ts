/** Columns of a simulated recorder, SI, as a read log. */
import type { LogTable } from '../../analysis/logs/index.ts';

export function flownTable(columns: Record<string, number[]>, t: readonly number[], rateHz: number): LogTable {
  const start = t[0] ?? 0;
  return {
    file: 'flight.csv',
    sha256: '0'.repeat(64),
    rows: t.length,
    flags: [],
    time: {
      seconds: Float64Array.from(t, (one) => one - start),
      startUtcMs: null,
      start: null,
      zone: 'unknown',
      durationSeconds: (t[t.length - 1] ?? start) - start,
      sampleRateHz: rateHz,
      segments: [],
    },
    channels: Object.entries(columns).map(([quantity, values], index) => ({
      column: quantity,
      index,
      name: quantity,
      quantity,
      unit: null,
      confidence: 1,
      why: 'simulated',
      values: Float64Array.from(values),
      valid: 1,
      flags: [],
    })),
  };
}
