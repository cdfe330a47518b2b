/**
 * Ouzel's engine monitor: 1 Hz, Celsius, local time from a clock nobody sets by satellite. Turns what the engine does
 * into what the recorder shows: sensor lag, a fixed offset per sensor, noise, rounding.
 */
import { fromSi } from '../../analysis/units/index.ts';
import { type Column, LOCAL_STAMP, logText } from './log-text.ts';
import type { Random } from './random.ts';
import { lag } from './signals.ts';

/** What the sensors are exposed to, once a second, SI. */
export interface EngineMoment {
  engineSpeed: number;
  manifoldPressure: number;
  fuelFlow: number;
  coolant: number;
  oil: number;
  oilPressure: number;
  fuelPressure: number;
  air: number;
  exit: number;
  fan: boolean;
  busVoltage: number;
  generatorCurrent: number;
  /** m, from the altitude encoder, and m3 since start; shown only where the flight pages are recorded */
  pressureAltitude?: number;
  fuelUsed?: number;
}

/** Fixed errors of the sensors as fitted, reading less truth, K. The same in every log of the story. */
export interface SensorOffsets {
  coolant: number;
  oil: number;
  air: number;
}

export const OUZEL_OFFSETS: SensorOffsets = { coolant: 0.2, oil: -0.4, air: -0.1 };

/** Offsets of an airplane whose sensors were checked: half-widths (95 %) of 1 K, 1 K and 0.5 K, normal. */
export function drawOffsets(random: Random): SensorOffsets {
  return { coolant: 0.5 * random.normal(), oil: 0.5 * random.normal(), air: 0.25 * random.normal() };
}

/** Lags of the sensors, s, and white noise on the reading before rounding, in the unit shown. */
export const MONITOR = { coolantLag: 6, oilLag: 10, airLag: 15, temperatureNoise: 0.15, temperatureStep: 0.5 } as const;

/** The recorder's channels, each once a second as shown before rounding, in the units of its headers. */
export interface MonitorColumns {
  engineSpeed: Float64Array;
  manifold: Float64Array;
  fuelFlow: Float64Array;
  coolant: Float64Array;
  oil: Float64Array;
  oilPressure: Float64Array;
  fuelPressure: Float64Array;
  air: Float64Array;
  exit: Float64Array;
  fan: Float64Array;
  voltage: Float64Array;
  current: Float64Array;
  encoder: Float64Array | null;
  fuelUsed: Float64Array | null;
}

/**
 * A monitor that takes one moment a second.
 * @param random its stream
 * @param size most rows it will take
 * @param noise factor on noise and offsets; 0 is a perfect recorder that still rounds
 * @param flight true: the flight pages too, fuel used and encoder altitude
 */
export function engineMonitor(random: Random, size: number, offsets: SensorOffsets, noise = 1, flight = false) {
  const column = () => new Float64Array(size);
  const columns: MonitorColumns = {
    engineSpeed: column(),
    manifold: column(),
    fuelFlow: column(),
    coolant: column(),
    oil: column(),
    oilPressure: column(),
    fuelPressure: column(),
    air: column(),
    exit: column(),
    fan: column(),
    voltage: column(),
    current: column(),
    encoder: flight ? column() : null,
    fuelUsed: flight ? column() : null,
  };
  const follow = { coolant: lag(MONITOR.coolantLag, 1), oil: lag(MONITOR.oilLag, 1), air: lag(MONITOR.airLag, 1) };
  const shake = (size: number) => noise * size * random.normal();
  let rows = 0;
  /** Takes the next second; returns the coolant temperature as the pilot reads it, in degrees Celsius. */
  const take = (m: EngineMoment): number => {
    const i = rows;
    rows += 1;
    const running = m.engineSpeed > 0;
    columns.engineSpeed[i] = running ? Math.max(0, fromSi(m.engineSpeed, 'rpm') + shake(4)) : 0;
    columns.manifold[i] = fromSi(m.manifoldPressure, 'inHg') + shake(0.06);
    columns.fuelFlow[i] = running ? Math.max(0, fromSi(m.fuelFlow, 'L/h') + shake(0.08)) : 0;
    const coolant =
      fromSi(follow.coolant(m.coolant), 'degC') + noise * offsets.coolant + shake(MONITOR.temperatureNoise);
    columns.coolant[i] = coolant;
    columns.oil[i] = fromSi(follow.oil(m.oil), 'degC') + noise * offsets.oil + shake(MONITOR.temperatureNoise);
    columns.oilPressure[i] = Math.max(0, fromSi(m.oilPressure, 'bar') + (running ? shake(0.04) : 0));
    columns.fuelPressure[i] = Math.max(0, fromSi(m.fuelPressure, 'bar') + shake(0.01));
    columns.air[i] = fromSi(follow.air(m.air), 'degC') + noise * offsets.air + shake(MONITOR.temperatureNoise);
    columns.exit[i] = fromSi(m.exit, '%');
    columns.fan[i] = m.fan ? 1 : 0;
    columns.voltage[i] = m.busVoltage + shake(0.03);
    columns.current[i] = Math.max(0, m.generatorCurrent + (running ? shake(0.5) : 0));
    if (columns.fuelUsed) columns.fuelUsed[i] = fromSi(m.fuelUsed ?? 0, 'L');
    if (columns.encoder) columns.encoder[i] = fromSi(m.pressureAltitude ?? 0, 'ft');
    return Math.round(coolant / MONITOR.temperatureStep) * MONITOR.temperatureStep;
  };
  return { columns, take, rows: () => rows };
}

/**
 * The monitor's file.
 * @param columns what it showed
 * @param rows rows taken
 * @param startLocalMillis its own clock at the first row, local time counted as if from 1970
 * @param session number in the preamble
 */
export function engineMonitorCsv(
  columns: MonitorColumns,
  rows: number,
  startLocalMillis: number,
  session: number,
): string {
  const list: Column[] = [
    { header: 'Engine speed [rpm]', step: 10, values: columns.engineSpeed },
    { header: 'Manifold [inHg]', step: 0.1, values: columns.manifold },
    { header: 'Fuel flow [L/h]', step: 0.1, values: columns.fuelFlow },
    { header: 'Coolant temp [degC]', step: MONITOR.temperatureStep, values: columns.coolant },
    { header: 'Oil temp [degC]', step: MONITOR.temperatureStep, values: columns.oil },
    { header: 'Oil press [bar]', step: 0.1, values: columns.oilPressure },
    { header: 'Fuel press [bar]', step: 0.01, values: columns.fuelPressure },
    { header: 'Outside air [degC]', step: 0.5, values: columns.air },
    { header: 'Exit door [%]', step: 1, values: columns.exit },
    { header: 'Cooling fan', step: 1, values: columns.fan },
    { header: 'Main bus volts [V]', step: 0.1, values: columns.voltage },
    { header: 'Generator amps [A]', step: 1, values: columns.current },
  ];
  if (columns.fuelUsed) list.push({ header: 'Fuel used [L]', step: 0.1, values: columns.fuelUsed });
  if (columns.encoder) list.push({ header: 'Encoder alt [ft]', step: 10, values: columns.encoder });
  const millis = Float64Array.from({ length: rows }, (_, i) => startLocalMillis + 1000 * i);
  const preamble = ['# Engine monitor', `# Session ${session}`, '# Clock: local, set by hand'];
  return logText(preamble, LOCAL_STAMP, millis, list);
}
