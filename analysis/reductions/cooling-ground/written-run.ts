/** A run read from the gauges every minute and written on a card, as the same kind of trace a log gives. */
import { type Recording, recordingOf } from '../../logs/index.ts';
import type { WrittenReading } from './input.ts';

export interface WrittenRun {
  name: string;
  recording: Recording;
}

/**
 * Written readings as recordings, one a run.
 * @param readings of all runs, SI
 * @returns one recording a run, readings in order of time
 */
export function writtenRuns(readings: readonly WrittenReading[]): WrittenRun[] {
  const names = [...new Set(readings.map((one) => one.run))];
  return names.map((run) => {
    const name = run === '' ? 'written figures' : `written figures, run ${run}`;
    const rows = readings.filter((one) => one.run === run).sort((a, b) => a.seconds - b.seconds);
    return { name, recording: recordingOfRows(name, rows) };
  });
}

function recordingOfRows(file: string, rows: readonly WrittenReading[]): Recording {
  const quantities = [...new Set(rows.flatMap((row) => [...row.values.keys()]))];
  const first = rows[0]?.seconds ?? 0;
  const seconds = Float64Array.from(rows, (row) => row.seconds - first);
  const steps = Array.from(seconds.slice(1), (t, i) => t - (seconds[i] ?? t)).sort((a, b) => a - b);
  const step = steps[Math.floor(steps.length / 2)] ?? 0;
  return recordingOf([
    {
      file,
      sha256: '',
      rows: rows.length,
      time: {
        seconds,
        startUtcMs: null,
        start: null,
        zone: 'unknown',
        durationSeconds: seconds[seconds.length - 1] ?? 0,
        sampleRateHz: step > 0 ? 1 / step : 0,
        segments: [],
      },
      channels: quantities.map((quantity, index) => ({
        column: quantity,
        index,
        name: quantity,
        quantity,
        unit: null,
        confidence: 1,
        why: 'written on the card',
        values: Float64Array.from(rows, (row) => row.values.get(quantity) ?? Number.NaN),
        valid: rows.filter((row) => row.values.has(quantity)).length / Math.max(1, rows.length),
        flags: [],
      })),
      flags: [],
    },
  ]);
}
