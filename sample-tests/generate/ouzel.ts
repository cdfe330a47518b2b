/** Ouzel as it really flies: polar, engine, propeller, static port. The truth which its flight logs are made from. */
import { toSi } from '../../analysis/units/index.ts';
import { airspeedOf, GRAVITY, impactPressure, SEA_LEVEL_DENSITY } from './air.ts';

export const OUZEL = {
  wingArea: 12.4,
  /** span squared over area, 9.0 m and 12.4 m2 */
  aspectRatio: 6.532,
  spanEfficiency: 0.76,
  dragClean: 0.026,
  dragGear: 0.014,
  dragFlapTakeoff: 0.012,
  dragFlapLanding: 0.04,
  /** W at sea level, full throttle */
  climbPower: toSi(135, 'kW'),
  climbSpeed: toSi(4600, 'rpm'),
  takeoffPower: toSi(150, 'kW'),
  takeoffSpeed: toSi(5000, 'rpm'),
  cruiseSpeed: toSi(4200, 'rpm'),
  fuelPerJoule: toSi(0.32, 'L/h') / toSi(1, 'kW'),
  fuelDensity: 720,
  probeRecovery: 0.8,
  airspeedLag: 0.5,
} as const;

export type Flap = 'up' | 'take-off' | 'landing';

export const FLAP_ANGLE: Record<Flap, number> = { up: 0, 'take-off': toSi(15, 'deg'), landing: toSi(35, 'deg') };

/** Lift coefficient at the break of a stall entered at 1 kt/s. */
export const MAXIMUM_LIFT: Record<Flap, number> = { up: 1.32, 'take-off': 1.5, landing: 1.72 };

export interface Shape {
  flap: Flap;
  gearDown: boolean;
}

/** Drag, N, at a dynamic pressure and lift. */
export function drag(dynamicPressure: number, lift: number, shape: Shape): number {
  const { wingArea, aspectRatio, spanEfficiency } = OUZEL;
  const liftCoefficient = lift / (dynamicPressure * wingArea);
  const flap = shape.flap === 'up' ? 0 : shape.flap === 'take-off' ? OUZEL.dragFlapTakeoff : OUZEL.dragFlapLanding;
  const parasite = OUZEL.dragClean + (shape.gearDown ? OUZEL.dragGear : 0) + flap;
  const induced = liftCoefficient ** 2 / (Math.PI * aspectRatio * spanEfficiency);
  return dynamicPressure * wingArea * (parasite + induced);
}

/** Share of the sea-level power left at a density ratio, unsupercharged, full throttle. */
export const powerLapse = (densityRatio: number): number => 1.132 * densityRatio - 0.132;

/** Efficiency of the constant-speed propeller at a true airspeed. */
export const propellerEfficiency = (tas: number): number => 0.88 * (1 - Math.exp(-tas / 30));

/** Specific excess power in a full-throttle climb, m/s. */
export function specificExcessPower(tas: number, rho: number, mass: number, shape: Shape): number {
  const power = OUZEL.climbPower * powerLapse(rho / SEA_LEVEL_DENSITY) * propellerEfficiency(tas);
  const weight = mass * GRAVITY;
  return (power - drag(0.5 * rho * tas ** 2, weight, shape) * tas) / weight;
}

// Static port: pressure error over impact pressure, a curve in lift coefficient with flaps up, set so that in level
// flight at 1000 kg the indicated airspeed is 4 kt low at 65 kt indicated and 3 kt high at 150 kt indicated.
const REFERENCE_MASS = 1000;
const CURVATURE = 0.04;
const FLAP_SHIFT: Record<Flap, number> = { up: 0, 'take-off': -0.012, landing: -0.03 };
const SLOW = anchor(65, 69);
const FAST = anchor(150, 147);
const SLOPE = (SLOW.error - FAST.error) / (SLOW.lift - FAST.lift) - CURVATURE * (SLOW.lift + FAST.lift);
const LEVEL = FAST.error - SLOPE * FAST.lift - CURVATURE * FAST.lift ** 2;

function anchor(indicatedKnots: number, calibratedKnots: number): { lift: number; error: number } {
  const indicated = impactPressure(toSi(indicatedKnots, 'kt'));
  const calibrated = impactPressure(toSi(calibratedKnots, 'kt'));
  return { lift: liftCoefficient(toSi(calibratedKnots, 'kt'), REFERENCE_MASS), error: 1 - indicated / calibrated };
}

/** Lift coefficient at a calibrated airspeed (taken for equivalent, under 0.2 % here), mass and load factor. */
export function liftCoefficient(cas: number, mass: number, loadFactor = 1): number {
  return (2 * mass * GRAVITY * loadFactor) / (SEA_LEVEL_DENSITY * Math.max(cas, 1) ** 2 * OUZEL.wingArea);
}

/** Pressure sensed at the static port less the true static pressure, Pa. Positive: airspeed reads low. */
export function staticError(cas: number, lift: number, flap: Flap): number {
  const held = Math.min(lift, 1.8);
  return (LEVEL + SLOPE * held + CURVATURE * held ** 2 + FLAP_SHIFT[flap]) * impactPressure(cas);
}

/** What a perfect airspeed indicator shows on this static port, m/s. */
export const indicatedAirspeed = (cas: number, lift: number, flap: Flap): number =>
  airspeedOf(impactPressure(cas) - staticError(cas, lift, flap));

/** The calibrated airspeed at which the indicator shows `ias` in level flight, m/s. */
export function calibratedFor(ias: number, mass: number, flap: Flap, loadFactor = 1): number {
  let cas = ias;
  // Indicated speed grows 0.95 to 1.5 times as fast as calibrated: steps of 0.8 settle to a micrometre per second.
  for (let i = 0; i < 10; i += 1)
    cas += 0.8 * (ias - indicatedAirspeed(cas, liftCoefficient(cas, mass, loadFactor), flap));
  return cas;
}
