/** What the air room gives for the inputs of a published case: by group, one function. Read by the gates and the accuracy table. */
import {
  a0,
  calibratedAirspeed,
  casFromEas,
  casFromTas,
  densityAltitude,
  equivalentAirspeed,
  geopotential,
  impactPressureAtMach,
  isentropicImpactPressure,
  MACH_LIMIT,
  machOf,
  p0,
  pressureAltitudeFromIndicated,
  pressureAt,
  R,
  soundSpeed,
  standardDay,
  standardTemperature,
  staticTemperature,
  staticTemperatureAtSpeed,
  stationPressure,
  stationPressureFromReport,
  temperatureForDensityAltitude,
  trueAirspeed,
  vapourPressure,
  virtualTemperature,
} from '../../analysis/air/index.ts';
import { unitOf } from '../../analysis/units/index.ts';
import type { TruthCase } from './truth-set.ts';
import { siInputs } from './truth-set.ts';

type Measured = Record<string, number | undefined>;

/** Derived units no instrument shows, so the units room does not hold them: SI of one. */
export const SPECIAL: Record<string, number> = {
  kinematic_viscosity_ft2_s: unitOf('ft2').factor,
  kinematic_viscosity_m2_s: 1,
  dynamic_viscosity_Pa_s: 1,
  pressure_psf: unitOf('lbf').factor / unitOf('ft2').factor,
  qc_psf: unitOf('lbf').factor / unitOf('ft2').factor,
  density_lb_ft3: unitOf('lb').factor / unitOf('ft').factor ** 3,
};

export function measureAtmosphere(one: TruthCase): Measured {
  const given = siInputs(one.inputs);
  if (one.group === 'density-altitude') return measureDensityAltitude(given);
  if (one.group === 'humidity') return { vapour_pressure: vapourPressure(need(given, 'dew_point')) };
  if (one.group === 'station-pressure') {
    return { station_pressure: stationPressureFromReport(need(given, 'altimeter_setting'), need(given, 'elevation')) };
  }
  if (one.group === 'pressure-altitude') {
    return {
      pressure_altitude: pressureAltitudeFromIndicated(need(given, 'elevation'), need(given, 'altimeter_setting')),
    };
  }
  const H = given.geopotential_altitude ?? geopotential(need(given, 'geometric_altitude'));
  const day = standardDay(H);
  const nu = day.mu / day.rho;
  return {
    temperature: day.T,
    pressure: day.p,
    pressure_psf: day.p,
    density: day.rho,
    density_lb_ft3: day.rho,
    sigma: day.sigma,
    sqrt_sigma: Math.sqrt(day.sigma),
    delta: day.delta,
    theta: day.theta,
    speed_of_sound: day.a,
    dynamic_viscosity_Pa_s: day.mu,
    kinematic_viscosity_m2_s: nu,
    kinematic_viscosity_ft2_s: nu,
    kinematic_viscosity_m2: nu,
  };
}

function measureDensityAltitude(given: Record<string, number>): Measured {
  if (given.density_altitude !== undefined) {
    const p = pressureAt(need(given, 'pressure_altitude'));
    return { temperature: temperatureForDensityAltitude(p, given.density_altitude) };
  }
  const p = given.station_pressure ?? stationPressure(need(given, 'altimeter_setting'), need(given, 'elevation'));
  const T = need(given, 'temperature');
  const saturated = vapourPressure(T);
  const e =
    given.dew_point !== undefined ? vapourPressure(given.dew_point) : (given.relative_humidity ?? 0) * saturated;
  return { density_altitude: densityAltitude(p, virtualTemperature(T, e, p)) };
}

export function measureAirspeed(one: TruthCase): Measured {
  const given = siInputs(one.inputs);
  if (one.group === 'temperature-recovery') return measureProbe(given);
  if (one.group === 'qc-cas') {
    const qc = isentropicImpactPressure(need(given, 'cas') / a0, p0);
    return { qc, qc_psf: qc };
  }
  if (one.group === 'mach-qcp') return { qc_over_p: isentropicImpactPressure(need(given, 'mach'), 1) };
  const H = given.pressure_altitude;
  const p = given.static_pressure ?? pressureAt(need({ H }, 'H'));
  const a = given.speed_of_sound;
  const T = given.temperature ?? (a !== undefined ? a ** 2 / (1.4 * R) : standardTemperature(need({ H }, 'H')));
  const cas = casOf(given, p, T);
  const tas = given.tas ?? tasOf(cas, p, T);
  const mach = given.mach ?? tas / soundSpeed(T);
  const rho = p / (R * T);
  return {
    cas,
    tas,
    mach,
    eas: mach > MACH_LIMIT ? undefined : equivalentAirspeed(cas, p),
    total_pressure: p + isentropicImpactPressure(mach, p),
    incompressible_q: 0.5 * rho * tas ** 2,
  };
}

function casOf(given: Record<string, number>, p: number, T: number): number {
  if (given.cas !== undefined) return given.cas;
  if (given.tas !== undefined) return casFromTas(given.tas, p, T);
  if (given.eas !== undefined) return casFromEas(given.eas, p);
  return calibratedAirspeed(impactPressureAtMach(need(given, 'mach'), p));
}

/** Two published rows lie past Mach 0.9, where the product refuses; there the bare relation is checked. */
function tasOf(cas: number, p: number, T: number): number {
  const mach = machOf(isentropicImpactPressure(cas / a0, p0), p);
  return mach > MACH_LIMIT ? mach * soundSpeed(T) : trueAirspeed(cas, p, T);
}

function measureProbe(given: Record<string, number>): Measured {
  const Ti = need(given, 'indicated_temperature');
  const K = need(given, 'recovery_factor');
  if (given.mach !== undefined) return { static_temperature: staticTemperature(Ti, given.mach, K) };
  return { static_temperature: staticTemperatureAtSpeed(Ti, need(given, 'tas'), K) };
}

function need(given: Record<string, number | undefined>, name: string): number {
  const value = given[name];
  if (value === undefined) throw new Error(`the case lacks ${name}`);
  return value;
}
