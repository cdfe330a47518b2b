/**
 * Ouzel's air-data and satellite logger: 5 Hz, UTC. One static port serves airspeed and altitude, so both carry its
 * error; the airspeed line lags, the air probe lags and feels ram heat, the satellites wander by a metre or two.
 */
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { pressureAltitudeOf, probeTemperature } from './air.ts';
import { type FlightState, STEP } from './flight.ts';
import { type Column, logText, UTC_STAMP } from './log-text.ts';
import { indicatedAirspeed, liftCoefficient, OUZEL, staticError } from './ouzel.ts';
import type { Random } from './random.ts';
import { lag, wander } from './signals.ts';

/** Fixed errors of the instruments as fitted, reading less truth: airspeed m/s, altitude m, air K. */
export interface AirDataOffsets {
  airspeed: number;
  altitude: number;
  air: number;
}

export const OUZEL_AIR_OFFSETS: AirDataOffsets = { airspeed: 0.03, altitude: 1, air: -0.1 };

/** Offsets of instruments checked to half-widths (95 %) of 0.25 m/s, 3.4 m and 0.5 K, normal. */
export const drawAirOffsets = (random: Random): AirDataOffsets => ({
  airspeed: 0.125 * random.normal(),
  altitude: 1.7 * random.normal(),
  air: 0.25 * random.normal(),
});

/** West, so that the compass shows more than the true heading. */
export const VARIATION_WEST = toSi(11, 'deg');

/** A sensed state: what a perfect indicator and altimeter on this static port would show, SI. */
export function sensed(state: FlightState): { ias: number; pressureAltitude: number } {
  const lift = liftCoefficient(state.cas, state.mass, state.loadFactor);
  return {
    ias: indicatedAirspeed(state.cas, lift, state.shape.flap),
    pressureAltitude: pressureAltitudeOf(state.pressure + staticError(state.cas, lift, state.shape.flap)),
  };
}

export interface LoggerOptions {
  startUtcMillis: number;
  offsets: AirDataOffsets;
  noise: number;
  /** columns beside the usual ones */
  more?: Column[];
  /** writes one row of so many, where the pilot set it to last a long flight */
  every?: number;
}

export interface Logged {
  /** milliseconds since 1970, UTC */
  millis: Float64Array;
  /** in the units of the headers, before rounding */
  columns: Column[];
}

/** The logger's file. */
export const airDataCsv = (logged: Logged): string =>
  logText(['# Air data and satellite logger'], UTC_STAMP, logged.millis, logged.columns);

/** What the logger shows of a flight. */
export function airData(states: readonly FlightState[], random: Random, options: LoggerOptions): Logged {
  const { offsets, noise } = options;
  const size = states.length;
  const column = () => new Float64Array(size);
  const [ias, palt, oat, lat, lon, alt] = [column(), column(), column(), column(), column(), column()];
  const [speed, track, heading, bank] = [column(), column(), column(), column()];
  const millis = new Float64Array(size);
  const line = lag(OUZEL.airspeedLag, STEP);
  const probe = lag(8, STEP);
  const place = [0, 1].map((i) => wander(random.stream(`place ${i}`), 1.2 * noise, 60, STEP));
  const satelliteHeight = wander(random.stream('satellite height'), 2.5 * noise, 90, STEP);
  const shake = (deviation: number) => noise * deviation * random.normal();
  states.forEach((s, i) => {
    const port = sensed(s);
    millis[i] = options.startUtcMillis + Math.round(1000 * s.t);
    ias[i] = Math.max(0, fromSi(line(port.ias) + noise * offsets.airspeed + shake(0.08), 'kt'));
    // A pitot tube says nothing below some 20 kt.
    if ((ias[i] ?? 0) < 20) ias[i] = 0;
    palt[i] = fromSi(port.pressureAltitude + noise * offsets.altitude + shake(0.4), 'ft');
    oat[i] = fromSi(
      probe(probeTemperature(s.temperature, s.tas, OUZEL.probeRecovery)) + noise * offsets.air + shake(0.1),
      'degC',
    );
    const metresNorth = (place[0]?.() ?? 0) / 111_200;
    const metresEast = (place[1]?.() ?? 0) / (111_200 * Math.cos(s.latitude));
    lat[i] = fromSi(s.latitude, 'deg') + metresNorth;
    lon[i] = fromSi(s.longitude, 'deg') + metresEast;
    alt[i] = s.height + satelliteHeight();
    const north = s.groundNorth + shake(0.05);
    const east = s.groundEast + shake(0.05);
    speed[i] = fromSi(Math.hypot(north, east), 'kt');
    track[i] = compass(Math.atan2(east, north));
    heading[i] = compass(s.heading + VARIATION_WEST + shake(toSi(0.5, 'deg')));
    bank[i] = fromSi(s.bank + shake(toSi(0.4, 'deg')), 'deg');
  });
  const columns: Column[] = [
    { header: 'IAS [kt]', step: 0.1, values: ias },
    { header: 'Press alt [ft]', step: 1, values: palt },
    { header: 'Outside air [degC]', step: 0.1, values: oat },
    { header: 'Latitude [deg]', step: 0.00001, values: lat },
    { header: 'Longitude [deg]', step: 0.00001, values: lon },
    { header: 'GPS alt [m]', step: 1, values: alt },
    { header: 'Ground speed [kt]', step: 0.1, values: speed },
    { header: 'Track [deg true]', step: 0.1, values: track },
    { header: 'Heading [deg mag]', step: 1, values: heading },
    { header: 'Bank [deg]', step: 1, values: bank },
    ...(options.more ?? []),
  ];
  return thinned({ millis, columns }, options.every ?? 1);
}

function thinned({ millis, columns }: Logged, every: number): Logged {
  const kept = (values: ArrayLike<number>) => Float64Array.from(values).filter((_, i) => i % every === 0);
  return { millis: kept(millis), columns: columns.map((one) => ({ ...one, values: kept(one.values) })) };
}

/** An angle as a compass shows it, degrees, 0 to under 360. */
function compass(angle: number): number {
  const full = fromSi(angle, 'deg') % 360;
  const shown = full < 0 ? full + 360 : full;
  return shown >= 359.95 ? 0 : shown;
}
