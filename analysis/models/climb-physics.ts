/** Energy, weight and wind in a climb: from what was flown to what the standard airplane does. Symbols as in the sources. */
import { casFromEas, densityRatio, g0, pressureAt, rho0, standardDay, trueAirspeed } from '../air/index.ts';
import { OutOfRange } from '../remarks/index.ts';

/**
 * Specific excess power: the rate of climb the airplane would have if it spent nothing on speed.
 * @param dhdt tapeline rate of climb, m/s
 * @param V true airspeed, m/s, 0 or more
 * @param dVdt rate of change of true airspeed, m/s2
 * @returns Ps, m/s
 * @source energy height h + V^2/(2 g): Ps = dh/dt + (V/g) dV/dt [ftm-108]
 */
export function specificExcessPower(dhdt: number, V: number, dVdt: number): number {
  return dhdt + (V / g0) * dVdt;
}

/**
 * Climb correction factor: rate of climb at a schedule in which true airspeed changes with height, over Ps.
 * @param V true airspeed, m/s, 0 or more
 * @param dVdh change of true airspeed with height, 1/s
 * @returns CCF, 1 where true airspeed is held, below 1 where it grows with height
 * @source CCF = 1/(1 + (V/g) dV/dh) [ftm-108]
 */
export function climbCorrectionFactor(V: number, dVdh: number): number {
  return 1 / (1 + (V / g0) * dVdh);
}

/**
 * Change of true airspeed with height when calibrated airspeed is held, on the standard day.
 * @param cas calibrated airspeed, m/s
 * @param H geopotential height, m, -4900 to 19900
 * @returns dV/dh, 1/s
 * @throws OutOfRange outside the standard atmosphere or the airspeed relations
 * @source central difference over 100 m of the relations in analysis/air [icao-7488]
 */
export function trueAirspeedGradient(cas: number, H: number): number {
  const half = 50;
  const at = (height: number) => trueAirspeed(cas, pressureAt(height), standardDay(height).T);
  return (at(H + half) - at(H - half)) / (2 * half);
}

/** What the induced drag of an airplane depends on. */
export interface InducedDrag {
  /** wing area, m2 */
  S: number;
  /** aspect ratio */
  A: number;
  /** span efficiency, 0 to 1 */
  e: number;
}

/**
 * Induced drag at the standard weight less that at the test weight, same equivalent airspeed.
 * @param Wt test weight, N, above 0
 * @param Ws standard weight, N, above 0
 * @param Ve equivalent airspeed, m/s, above 0
 * @param wing area, aspect ratio and span efficiency
 * @returns dD, N, positive where the standard weight is the greater
 * @throws OutOfRange when a weight, the speed or the wing is not above 0
 * @source parabolic polar: dD = 2 (Ws^2 - Wt^2)/(rho0 Ve^2 S pi e A) [ftm-108]
 */
export function inducedDragChange(Wt: number, Ws: number, Ve: number, wing: InducedDrag): number {
  for (const [name, value] of Object.entries({ Wt, Ws, Ve, S: wing.S, A: wing.A, e: wing.e })) {
    if (!(value > 0)) throw new OutOfRange(name, value, 'above 0');
  }
  return (2 * (Ws ** 2 - Wt ** 2)) / (rho0 * Ve ** 2 * wing.S * Math.PI * wing.e * wing.A);
}

/**
 * Specific excess power at the standard weight, same equivalent airspeed, density and power.
 * @param Ps specific excess power at the test weight, m/s
 * @param Wt test weight, N
 * @param Ws standard weight, N
 * @param V true airspeed, m/s
 * @param dD induced drag change from inducedDragChange, N
 * @returns Ps at the standard weight, m/s
 * @source thrust power and parasite power unchanged: Ps_s = (Wt Ps_t - dD V)/Ws [ftm-108]
 */
export function excessPowerAtWeight(Ps: number, Wt: number, Ws: number, V: number, dD: number): number {
  return (Wt * Ps - dD * V) / Ws;
}

/**
 * How much a wind that changes with height adds to the observed rate of climb.
 * @param rate rate of climb, m/s
 * @param V true airspeed, m/s
 * @param dWdh growth of headwind with height, 1/s
 * @returns apparent rate, m/s; it reverses its sign with the heading
 * @source kinetic energy against the air, from the energy equation [ftm-108]
 */
export function windGradientEffect(rate: number, V: number, dWdh: number): number {
  return rate * (V / g0) * dWdh;
}

/**
 * Angle of climb.
 * @param rate rate of climb, m/s
 * @param V true airspeed, m/s, above the size of the rate
 * @returns angle, rad
 * @throws OutOfRange when the rate exceeds the airspeed
 * @source sin(gamma) = rate / V
 */
export function climbAngle(rate: number, V: number): number {
  if (!(Math.abs(rate) <= V)) throw new OutOfRange('rate of climb', rate, 'at most the true airspeed');
  return Math.asin(rate / V);
}

/**
 * Rate of climb that a gradient (rise over horizontal distance) asks for.
 * @param gradient rise over run, such as 0.083
 * @param V true airspeed, m/s
 * @returns rate, m/s
 * @source V sin(atan(gradient)); former 14 CFR 23.65(a) states gradients [14cfr23-65]
 */
export function rateForGradient(gradient: number, V: number): number {
  return V * Math.sin(Math.atan(gradient));
}

/**
 * Calibrated airspeed of a true airspeed on the standard day at a density altitude.
 * @param V true airspeed, m/s
 * @param Hd density altitude, m
 * @returns calibrated airspeed, m/s
 * @throws OutOfRange outside the standard atmosphere or the airspeed relations
 * @source EAS = TAS sqrt(sigma), then [icao-7488]
 */
export function casAtDensityAltitude(V: number, Hd: number): number {
  const day = standardDay(Hd);
  return casFromEas(V * Math.sqrt(densityRatio(day.p, day.T)), day.p);
}
