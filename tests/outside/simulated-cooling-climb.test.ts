/**
 * A climb of an independent flight-dynamics simulation, two recorders with clocks of their own, through the whole
 * reduction: it must align them, find the climb itself, and hold every true peak inside its uncertainty.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { alignTables, type LogTable, recordingOf } from '../../analysis/logs/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';

const COLUMNS: Record<string, [string, string]> = {
  'indicated airspeed kt': ['indicated-airspeed', 'kt'],
  'pressure altitude ft': ['pressure-altitude', 'ft'],
  'outside air degC': ['outside-air-temperature', 'degC'],
  rpm: ['engine-speed', 'rpm'],
  'manifold pressure inHg': ['manifold-pressure', 'inHg'],
  'head 1 degF': ['cylinder-head-temperature#1', 'degF'],
  'head 2 degF': ['cylinder-head-temperature#2', 'degF'],
  'head 3 degF': ['cylinder-head-temperature#3', 'degF'],
  'head 4 degF': ['cylinder-head-temperature#4', 'degF'],
  'oil degF': ['oil-temperature', 'degF'],
  'reported altitude ft': ['reported-altitude', 'ft'],
};

function table(file: string): LogTable {
  const [header = '', ...lines] = readFileSync(join(import.meta.dirname, 'cooling-climb', file), 'utf8')
    .trim()
    .split('\n');
  const rows = lines.map((line) => line.split(','));
  const seconds = Float64Array.from(rows, (row) => Number(row[0]));
  return {
    file,
    sha256: '0'.repeat(64),
    rows: rows.length,
    flags: [],
    time: {
      seconds,
      startUtcMs: null,
      start: null,
      zone: 'unknown',
      durationSeconds: seconds[seconds.length - 1] ?? 0,
      sampleRateHz: 1,
      segments: [],
    },
    channels: header.split(',').flatMap((column, index) => {
      const known = COLUMNS[column];
      if (!known) return [];
      const [quantity, unit] = known;
      const values = Float64Array.from(rows, (row) => (row[index] ? toSi(Number(row[index]), unit) : Number.NaN));
      return [
        {
          column,
          index,
          name: column,
          quantity,
          unit,
          confidence: 1,
          why: 'named in the file',
          values,
          valid: 1,
          flags: [],
        },
      ];
    }),
  };
}

/** Only what the reduction may be told: how well sensors read, that the air is static. */
function airplane(accuracy: 'exact' | 'assumed'): Airplane {
  const path = join(import.meta.dirname, '..', '..', 'sample-tests', 'wrenlet', 'airplane.json');
  const plain = JSON.parse(readFileSync(path, 'utf8'));
  const exact = (unit: string) => ({ u95: 0, unit, basis: 'simulated without error' });
  return airplaneSchema.parse({
    ...plain,
    instruments: {
      units: plain.instruments.units,
      airTemperatureIsStatic: true,
      accuracy:
        accuracy === 'assumed'
          ? {}
          : {
              'cylinder-head-temperature': exact('dK'),
              'oil-temperature': exact('dK'),
              'outside-air-temperature': exact('dK'),
              'pressure-altitude': exact('m'),
            },
    },
  });
}

const truth = JSON.parse(readFileSync(join(import.meta.dirname, 'truth', 'cooling-climb-simulated.json'), 'utf8'));
const PEAKS = [
  ...[1, 2, 3, 4].map((n) => ({
    channel: `cylinder-head-temperature#${n}`,
    peak: toSi(truth.headPeakF[n - 1], 'degF'),
    seconds: truth.headPeakSeconds,
    air: toSi(truth.outsideAirAtHeadPeakC, 'degC'),
    height: toSi(truth.pressureAltitudeAtHeadPeakFt, 'ft'),
  })),
  {
    channel: 'oil-temperature',
    peak: toSi(truth.oilPeakF, 'degF'),
    seconds: truth.oilPeakSeconds,
    air: toSi(truth.outsideAirAtOilPeakC, 'degC'),
    height: toSi(truth.pressureAltitudeAtOilPeakFt, 'ft'),
  },
];

function reduced(accuracy: 'exact' | 'assumed'): Result {
  const tables = [table('air.csv'), table('engine.csv')];
  const { shifts } = alignTables(tables);
  const result = reductionOf('cooling-climb')?.reduce({
    recording: recordingOf(tables, shifts),
    airplane: airplane(accuracy),
  });
  if (!result) throw new Error('no cooling climb');
  return result;
}

function rowOf(result: Result, channel: string): Record<string, unknown> {
  const peaks = result.tables.find((one) => one.name === 'peaks');
  const row = peaks?.rows.find((cells) => cells[0] === channel);
  return Object.fromEntries((peaks?.columns ?? []).map((column, i) => [column.name, row?.[i]]));
}

describe('independent flight-dynamics simulation: a climb at full power', () => {
  const result = reduced('exact');

  it('is found as one climb, and that it began unstabilised is said', () => {
    expect(result.segments).toHaveLength(1);
    expect(result.flags.map((one) => one.kind)).toContain('not-stabilised');
  });

  it.each(PEAKS.map((one) => [one.channel, one] as const))('%s: peak, its air and its height', (channel, true_) => {
    const row = rowOf(result, channel);
    const error = Number(row.peak) - true_.peak;
    expect(Math.abs(error)).toBeLessThan(0.6);
    expect(Math.abs(error)).toBeLessThanOrEqual(Number(row['peak-u95']));
    // flat tops: half a minute either way is a few hundredths of the rise
    expect(Math.abs(Number(row['peak-seconds']) - true_.seconds)).toBeLessThan(30);
    expect(Math.abs(Number(row.air) - true_.air)).toBeLessThan(0.6);
    expect(Math.abs(Number(row['pressure-altitude']) - true_.height)).toBeLessThan(60);
    // 100 degF at sea level less 3.6 degF per 1000 ft, 14 CFR 23.1043
    const hot = toSi(100 - 3.6 * (fromSi(true_.height, 'ft') / 1000), 'degF');
    const corrected = true_.peak + hot - true_.air;
    expect(Math.abs(Number(row.corrected) - corrected)).toBeLessThan(0.8);
    expect(Math.abs(Number(row.corrected) - corrected)).toBeLessThanOrEqual(Number(row.u95));
  });

  it('holds the truth with sensors nobody checked too', () => {
    const assumed = reduced('assumed');
    for (const { channel, peak } of PEAKS) {
      const row = rowOf(assumed, channel);
      expect(Math.abs(Number(row.peak) - peak)).toBeLessThanOrEqual(Number(row['peak-u95']));
    }
    expect(assumed.flags.map((one) => one.kind)).toContain('assumed-calibration');
  });
});
