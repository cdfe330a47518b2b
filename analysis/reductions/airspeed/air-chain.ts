/** From one reading to true airspeed: static source, probe recovery, humidity. Symbols as in the sources. */
import {
  impactPressure,
  machOf,
  pressureAt,
  soundSpeed,
  staticTemperature,
  vapourPressure,
  virtualTemperature,
} from '../../air/index.ts';

/** How the instruments are to be read, and by how much a sensor is shifted when its doubt is carried. */
export interface AirChain {
  /** airspeed and altimeter share the static source that is in error */
  commonStatic: boolean;
  /** recovery factor of the probe, 0 to 1 */
  recovery: number;
  /** vapour pressure where a dew point was written, Pa; else a relative humidity, 0 to 1 */
  vapour: { pressure: number } | { relative: number };
  /** true less read: airspeed instrument offset and gain, pressure altitude offset and gain, probe; SI */
  shift: { ias: number; iasGain: number; height: number; heightGain: number; air: number };
  /** error of a static source of its own as a share of impact pressure, sensed less true */
  otherStatic: number;
}

/**
 * True airspeed of one reading with a correction.
 * @param ias indicated airspeed, m/s
 * @param correction calibrated less indicated airspeed (free of instrument error), m/s
 * @param height pressure altitude as sensed, m
 * @param air temperature as the probe reads it, K
 * @param chain how to read them
 * @returns true airspeed, m/s
 * @throws OutOfRange when a value lies outside the relations of air data
 * @source static error from the correction itself, so p needs no second pass: dp_s = qc(CAS) - qc(IAS) [rp-1046]
 */
export function trueAirspeedOf(ias: number, correction: number, height: number, air: number, chain: AirChain): number {
  const { shift } = chain;
  const read = trueReading(ias, chain);
  const qc = impactPressure(read + correction);
  const sensed = pressureAt(height + shift.height + shift.heightGain * height);
  const p = chain.commonStatic ? sensed - (qc - impactPressure(read)) : sensed - chain.otherStatic * qc;
  const mach = machOf(qc, p);
  const T = staticTemperature(air + shift.air, mach, chain.recovery);
  return mach * soundSpeed(virtualOf(T, p, chain));
}

/**
 * Static pressure and temperature of one reading.
 * @param ias indicated airspeed, m/s
 * @param correction calibrated less indicated airspeed, m/s
 * @param height pressure altitude as sensed, m
 * @param air temperature as the probe reads it, K
 * @param chain how to read them
 * @returns true static pressure, Pa, and temperature, K
 * @throws OutOfRange when a value lies outside the relations of air data
 */
export function airOf(
  ias: number,
  correction: number,
  height: number,
  air: number,
  chain: AirChain,
): { p: number; T: number } {
  const qc = impactPressure(ias + correction);
  const p = pressureAt(height) - (chain.commonStatic ? qc - impactPressure(ias) : 0);
  return { p, T: staticTemperature(air, machOf(qc, p), chain.recovery) };
}

function virtualOf(T: number, p: number, chain: AirChain): number {
  const { vapour } = chain;
  if ('pressure' in vapour) return vapour.pressure > 0 ? virtualTemperature(T, vapour.pressure, p) : T;
  return vapour.relative > 0 ? virtualTemperature(T, vapour.relative * vapourPressure(T), p) : T;
}

/**
 * What the airspeed instrument would show without its own error.
 * @param ias indicated airspeed, m/s
 * @param chain how the instruments are read
 * @returns m/s
 */
export function trueReading(ias: number, chain: AirChain): number {
  return ias * (1 + chain.shift.iasGain) + chain.shift.ias;
}
