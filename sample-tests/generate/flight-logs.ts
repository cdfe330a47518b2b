/** Two recorders aboard one flight: the logger in UTC, the monitor in local time by a clock that runs ahead. */
import { toSi } from '../../analysis/units/index.ts';
import {
  type AirDataOffsets,
  airData,
  airDataCsv,
  drawAirOffsets,
  type Logged,
  OUZEL_AIR_OFFSETS,
  sensed,
} from './air-data-logger.ts';
import {
  drawOffsets,
  engineMonitor,
  engineMonitorCsv,
  type MonitorColumns,
  OUZEL_OFFSETS,
  type SensorOffsets,
} from './engine-monitor.ts';
import { type FlightState, STEP } from './flight.ts';
import type { Column } from './log-text.ts';
import type { Random } from './random.ts';

const LOCAL_AHEAD_OF_UTC_MILLIS = 3_600_000;
const STEPS_PER_SECOND = Math.round(1 / STEP);

export interface Recorders {
  /** logger's first row */
  startUtcMillis: number;
  /** how far the monitor's clock is ahead of true local time, s, in tenths */
  monitorAheadSeconds: number;
  /** monitor's first row after the logger's, about, s */
  monitorStartsAfter: number;
  session: number;
  more?: Column[];
  /** the logger writes one row of so many */
  loggerEvery?: number;
}

export interface FlightOffsets {
  sensors: SensorOffsets;
  airData: AirDataOffsets;
}

export const OUZEL_FLIGHT_OFFSETS: FlightOffsets = { sensors: OUZEL_OFFSETS, airData: OUZEL_AIR_OFFSETS };

export const drawFlightOffsets = (random: Random): FlightOffsets => ({
  sensors: drawOffsets(random),
  airData: drawAirOffsets(random),
});

export interface ClockTruth {
  monitorAheadSeconds: number;
  /** add to the monitor's seconds since its first row to get the logger's, s */
  monitorShiftSeconds: number;
}

/** What the engine monitor shows of a flight, and what its clock was. */
export interface Monitored {
  columns: MonitorColumns;
  rows: number;
  startLocalMillis: number;
  clock: ClockTruth;
}

/** The engine monitor aboard a flight. */
export function monitorFlight(
  states: readonly FlightState[],
  random: Random,
  recorders: Recorders,
  offsets: SensorOffsets,
  noise: number,
): Monitored {
  // The monitor ticks on its own whole seconds: its first row falls on the next of them.
  const ahead = Math.round(1000 * recorders.monitorAheadSeconds);
  const wanted = recorders.startUtcMillis + 1000 * recorders.monitorStartsAfter + LOCAL_AHEAD_OF_UTC_MILLIS + ahead;
  const startLocalMillis = Math.ceil(wanted / 1000) * 1000;
  const shiftMillis = startLocalMillis - LOCAL_AHEAD_OF_UTC_MILLIS - ahead - recorders.startUtcMillis;
  const first = Math.round(shiftMillis / 1000 / STEP);
  const size = Math.max(0, Math.floor((states.length - 1 - first) / STEPS_PER_SECOND) + 1);
  const monitor = engineMonitor(random, size, offsets, noise, true);
  for (let k = 0; k < size; k += 1) {
    const s = states[first + k * STEPS_PER_SECOND];
    if (!s) break;
    monitor.take({
      engineSpeed: s.engineSpeed,
      manifoldPressure: s.manifoldPressure,
      fuelFlow: s.fuelFlow,
      coolant: s.coolant,
      oil: s.oil,
      oilPressure: toSi(Math.min(6, 3.2 + 1.2 * (s.engineSpeed / toSi(4600, 'rpm'))), 'bar'),
      fuelPressure: toSi(3, 'bar'),
      air: s.temperature,
      exit: s.exit,
      fan: false,
      busVoltage: 14.2,
      generatorCurrent: 19,
      pressureAltitude: sensed(s).pressureAltitude,
      fuelUsed: s.fuelUsed,
    });
  }
  return {
    columns: monitor.columns,
    rows: monitor.rows(),
    startLocalMillis,
    clock: { monitorAheadSeconds: recorders.monitorAheadSeconds, monitorShiftSeconds: shiftMillis / 1000 },
  };
}

export interface FlightLogs {
  logged: Logged;
  monitored: Monitored;
  /** the two files; written when asked, for that is most of the work */
  logger: () => string;
  monitor: () => string;
  clock: ClockTruth;
}

/** Both recorders aboard a flight. */
export function flightLogs(
  states: readonly FlightState[],
  random: Random,
  recorders: Recorders,
  offsets: FlightOffsets,
  noise: number,
): FlightLogs {
  const logged = airData(states, random.stream('logger'), {
    startUtcMillis: recorders.startUtcMillis,
    offsets: offsets.airData,
    noise,
    ...(recorders.more ? { more: recorders.more } : {}),
    ...(recorders.loggerEvery ? { every: recorders.loggerEvery } : {}),
  });
  // The last seconds are missing: the pilot switches the monitor off first.
  const seen = states.slice(0, -8 * STEPS_PER_SECOND);
  const monitored = monitorFlight(seen, random.stream('monitor'), recorders, offsets.sensors, noise);
  return {
    logged,
    monitored,
    logger: () => airDataCsv(logged),
    monitor: () => engineMonitorCsv(monitored.columns, monitored.rows, monitored.startLocalMillis, recorders.session),
    clock: monitored.clock,
  };
}
