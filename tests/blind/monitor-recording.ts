/** The generated engine monitor as a recording, rounded as its file is, without going through text. */
import { type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { MONITOR, type MonitorColumns } from '../../sample-tests/generate/engine-monitor.ts';

/** column, glossary name, unit, step as in the file */
const CHANNELS = [
  ['engineSpeed', 'engine-speed', 'rpm', 10],
  ['manifold', 'manifold-pressure', 'inHg', 0.1],
  ['fuelFlow', 'fuel-flow', 'L/h', 0.1],
  ['coolant', 'coolant-temperature', 'degC', MONITOR.temperatureStep],
  ['oil', 'oil-temperature', 'degC', MONITOR.temperatureStep],
  ['air', 'outside-air-temperature', 'degC', 0.5],
  ['exit', 'cowl-exit-position', '%', 1],
  ['fan', 'cooling-fan-state', 'none', 1],
] as const;

/** The recording of the first rows of a monitor's columns, one a second. */
export function monitorRecording(columns: MonitorColumns, rows: number, file = 'ground-run.csv'): Recording {
  return recordingOf([
    {
      file,
      sha256: '0'.repeat(64),
      rows,
      time: {
        seconds: Float64Array.from({ length: rows }, (_, i) => i),
        startUtcMs: null,
        start: null,
        zone: 'unknown',
        durationSeconds: rows - 1,
        sampleRateHz: 1,
        segments: [],
      },
      channels: CHANNELS.map(([name, quantity, unit, step], index) => ({
        column: quantity,
        index,
        name: quantity,
        quantity,
        unit,
        confidence: 1,
        why: 'generated',
        values: columns[name].subarray(0, rows).map((value) => toSi(Math.round(value / step) * step, unit)),
        valid: 1,
        flags: [],
      })),
      flags: [],
    },
  ]);
}
