/** Story item 4: low and fast taxi; the engine monitor loses its supply in the middle of a line. */
import { toSi } from '../../analysis/units/index.ts';
import { engineMonitorCsv, OUZEL_OFFSETS } from './engine-monitor.ts';
import { FIELD_HEIGHT } from './first-flight.ts';
import { type FlightSetting, fly } from './flight.ts';
import { monitorFlight } from './flight-logs.ts';
import { degrees, knots, type Manoeuvre, roll } from './manoeuvre.ts';
import { OUZEL } from './ouzel.ts';
import { randomFrom } from './random.ts';

const SEED = 3101;
const RUNWAY = degrees(249);

export interface TaxiTruth {
  seed: number;
  /** whole rows before the cut, and characters of the row that was being written */
  wholeRows: number;
  charactersOfLastRow: number;
  /** s from the first row to the cut */
  cutSeconds: number;
  coolantPeak: number;
}

/** The monitor's file as the interruption left it. */
export function taxiCut(): { csv: string; truth: TaxiTruth } {
  const random = randomFrom(SEED, 'taxi');
  const setting: FlightSetting = {
    weather: {
      windFrom: degrees(240),
      windSpeed: knots(5),
      referenceHeight: FIELD_HEIGHT,
      shear: 0,
      veer: 0,
      drift: { north: 0, east: 0 },
      midSeconds: 0,
      wanderSize: 0.2,
      wanderMemory: 300,
      gust: 0.5,
      gustUp: 0.2,
      lift: 0,
      liftMemory: 60,
    },
    warmer: 3,
    fieldHeight: FIELD_HEIGHT,
    fieldPressureAltitude: 170,
    startHeight: FIELD_HEIGHT,
    startHeading: degrees(69),
    startIas: 0,
    mass: 940,
    latitude: degrees(45),
    longitude: degrees(-37),
    warmth: 0.6,
    noise: 1,
  };
  const { states } = fly(plan(), setting, random);
  const recorders = {
    startUtcMillis: Date.UTC(2031, 3, 19, 15, 2, 11),
    monitorAheadSeconds: 43.0,
    monitorStartsAfter: 0,
    session: 17,
  };
  const monitored = monitorFlight(states, random.stream('monitor'), recorders, OUZEL_OFFSETS, 1);
  const whole = engineMonitorCsv(monitored.columns, monitored.rows, monitored.startLocalMillis, recorders.session);
  const lines = whole.split('\n');
  const headerLines = lines.length - 1 - monitored.rows;
  const wholeRows = monitored.rows - 1;
  const charactersOfLastRow = 37;
  const lastRow = (lines[headerLines + wholeRows] ?? '').slice(0, charactersOfLastRow);
  return {
    csv: `${lines.slice(0, headerLines + wholeRows).join('\n')}\n${lastRow}`,
    truth: {
      seed: SEED,
      wholeRows,
      charactersOfLastRow,
      cutSeconds: wholeRows,
      coolantPeak: Math.max(...states.map((s) => s.coolant)),
    },
  };
}

function plan(): Manoeuvre[] {
  const away = RUNWAY + Math.PI;
  const taxi = toSi(1800, 'rpm');
  const run = (label: string, speed: number): Manoeuvre[] => [
    roll(label, RUNWAY, knots(speed), 22, OUZEL.takeoffSpeed, 1.8),
    roll('slow down', RUNWAY, 0, 26, toSi(1400, 'rpm'), 1.5),
    roll('taxi back', away, knots(9), 75, taxi),
    roll('line up', RUNWAY, knots(3), 15, taxi),
  ];
  return [
    roll('taxi', away, knots(8), 120, taxi),
    roll('line up', RUNWAY, knots(3), 15, taxi),
    ...run('low taxi', 25),
    ...run('fast taxi', 40),
    roll('fast taxi', RUNWAY, knots(50), 14, OUZEL.takeoffSpeed, 1.8),
  ];
}
