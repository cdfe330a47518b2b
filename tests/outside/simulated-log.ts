/** Logs of an independent flight-dynamics simulation as recordings, and the truth beside them. Origin: airspeed/README.md. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, type AirplaneFile, airplaneSchema } from '../../analysis/airplane/index.ts';
import { type LogTable, type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { toSi } from '../../analysis/units/index.ts';

export interface SimulatedFlight {
  file: string;
  wingAreaM2: number;
  massKg: number;
  probeRecovery: number;
  wind: { speedKt: number; fromTrueDeg: number };
  /** indicated airspeed and correction, kt, evenly along the law */
  positionError: [number, number][];
  /** role, from, to (s), indicated airspeed, correction and true airspeed without noise (kt) */
  segments: [string, number, number, number, number, number][];
}

export function simulatedFlights(): SimulatedFlight[] {
  const path = join(import.meta.dirname, 'truth', 'airspeed-simulated.json');
  return JSON.parse(readFileSync(path, 'utf8')).flights;
}

const COLUMNS: Record<string, [string, string]> = {
  'IAS kt': ['indicated-airspeed', 'kt'],
  'pressure altitude ft': ['pressure-altitude', 'ft'],
  'outside air degC': ['outside-air-temperature', 'degC'],
  'ground speed kt': ['ground-speed', 'kt'],
  'track deg true': ['track-true', 'deg'],
  'bank deg': ['roll-angle', 'deg'],
};

export function simulatedRecording(file: string): Recording {
  return recordingOf([simulatedTable(file)]);
}

export function simulatedTable(file: string): LogTable {
  const lines = readFileSync(join(import.meta.dirname, 'airspeed', file), 'utf8')
    .trim()
    .split('\n');
  const rows = lines.slice(1).map((line) => line.split(','));
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
      sampleRateHz: 2.5,
      segments: [],
    },
    channels: (lines[0] ?? '').split(',').flatMap((column, index) => {
      const known = COLUMNS[column];
      if (!known) return [];
      const [quantity, unit] = known;
      const cells = rows.map((row) => row[index] ?? '');
      return [
        {
          column,
          index,
          name: column,
          quantity,
          unit,
          confidence: 1,
          why: 'named in the file',
          values: Float64Array.from(cells, (cell) => (cell === '' ? Number.NaN : toSi(Number(cell), unit))),
          valid: cells.filter((cell) => cell !== '').length / cells.length,
          flags: [],
        },
      ];
    }),
  };
}

/** An airplane of which only what an airspeed calibration asks is said; its instruments exact, or as good as assumed. */
export function simulatedAirplane(flight: Told, accuracy: 'exact' | 'assumed'): Airplane {
  return airplaneSchema.parse(simulatedAirplaneFile(flight, accuracy));
}

/** What a user of the logs may be told. */
export interface Told {
  wingAreaM2: number;
  probeRecovery?: number;
  massLb?: number;
  variationEastDeg?: number;
}

/** The same as the file a builder would write. */
export function simulatedAirplaneFile(flight: Told, accuracy: 'exact' | 'assumed'): AirplaneFile {
  const path = join(import.meta.dirname, '..', '..', 'sample-tests', 'ouzel', 'airplane.json');
  const plain = JSON.parse(readFileSync(path, 'utf8'));
  const exact = Object.fromEntries(
    Object.values(COLUMNS).map(([quantity, unit]) => [
      quantity,
      { u95: 0, unit: unit === 'degC' ? 'dK' : unit, basis: 'simulated without error' },
    ]),
  );
  return {
    ...plain,
    wing: { area: { value: flight.wingAreaM2, unit: 'm2' } },
    ...(flight.massLb === undefined
      ? {}
      : { limits: { ...plain.limits, mass: { maximum: { value: flight.massLb, unit: 'lb', source: 'told' } } } }),
    place: { ...plain.place, variation: { value: flight.variationEastDeg ?? 0, unit: 'deg' } },
    instruments: {
      units: plain.instruments.units,
      accuracy: accuracy === 'exact' ? exact : {},
      probeRecovery: flight.probeRecovery ?? 0,
      airTemperatureIsStatic: (flight.probeRecovery ?? 0) === 0,
      commonStatic: true,
    },
  };
}
