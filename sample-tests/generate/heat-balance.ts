/**
 * Ouzel's cooling system as a lumped heat balance, the truth behind every coolant trace of the samples.
 *
 * Nodes: coolant with the metal it wets; cylinder-head metal above it (fast, seconds); engine block and oil (slow,
 * about ten minutes, weakly coupled). Beside them the heat kept in the exhaust ports (it is what soaks back after
 * shutdown) and the thermostat's wax. Radiator conductance follows the air through the duct: propeller wash or
 * flight speed, fan, exit door. Steady state is that of the whole model, the slow node included.
 */
import { toSi } from '../../analysis/units/index.ts';

/** Everything that decides where the heat goes, at one moment. */
export interface Operation {
  /** 1/s; 0 is stopped */
  engineSpeed: number;
  /** shaft power, W */
  power: number;
  /** exit door, 0..1 */
  exit: number;
  fan: boolean;
  /** dynamic pressure of flight, Pa; 0 on the ground */
  dynamicPressure: number;
  /** air at the scoop, K */
  air: number;
  /** momentary factor on the air through the duct: gusts */
  gust: number;
}

export interface HeatState {
  coolant: number;
  head: number;
  oil: number;
  /** heat stored in the exhaust ports above coolant, J */
  stored: number;
  wax: number;
}

/** Constants of the invented airplane; heat capacities J/K, conductances W/K, times s. */
export const OUZEL_HEAT = {
  coolantCapacity: 45_000,
  headCapacity: 12_000,
  oilCapacity: 30_000,
  headToCoolant: 900,
  headToCoolantStopped: 250,
  oilToCoolant: 5,
  /** radiator at the reference: door fully open, wash of the propeller at 2500 rpm, fan off, thermostat open */
  radiator: 188.6,
  oilCooler: 50,
  /** through the skin of engine and hoses */
  skin: 12,
  skinStopped: 12,
  oilSkinStopped: 8,
  radiatorStopped: 0.02,
  /** duct flow of the fan alone, in units of the wash at the reference */
  fanFlow: 0.585,
  /** dynamic pressure that gives the flow of the reference wash, Pa; a scoop at speed turns ever more air away */
  flightFlowPressure: 20.5,
  flightFlowExponent: 0.7,
  thermostatStart: toSi(80, 'degC'),
  thermostatOpen: toSi(92, 'degC'),
  waxLag: 12,
  /** heat to coolant, W: friction with engine speed, the rest with shaft power */
  frictionHeat: 8_000,
  powerHeatShare: 0.4533,
  oilShare: 0.26,
  storedAtReference: 600_000,
  storedGain: 120,
  storedRelease: 100,
} as const;

const REFERENCE_SPEED = toSi(2500, 'rpm');
const RATED_SPEED = toSi(5000, 'rpm');
const RATED_POWER = toSi(150, 'kW');
const REFERENCE_HEAT = 16_500;

/** Shaft power on the ground, propeller on its fine stop: it takes power as the cube of speed, W. */
export function groundPower(engineSpeed: number): number {
  return RATED_POWER * (engineSpeed / RATED_SPEED) ** 3;
}

/** Heat to the coolant, W. */
export function coolantHeat(engineSpeed: number, power: number): number {
  if (engineSpeed <= 0) return 0;
  return OUZEL_HEAT.frictionHeat * (engineSpeed / REFERENCE_SPEED) + OUZEL_HEAT.powerHeatShare * power;
}

/** Flow of air through the duct, 1 at the reference. */
function ductFlow(o: Operation): number {
  const wash = o.engineSpeed / REFERENCE_SPEED;
  const flight = (o.dynamicPressure / OUZEL_HEAT.flightFlowPressure) ** OUZEL_HEAT.flightFlowExponent;
  const fan = o.fan ? OUZEL_HEAT.fanFlow : 0;
  return Math.sqrt(wash * wash + flight + fan * fan) * o.gust;
}

/** Share of the full flow that the door lets out: 0.94 at 30 %, 0.97 at 60 %, 1 at 100 % on the ground. */
function doorShare(o: Operation): number {
  // In flight the exit area governs far more than in the wash, where the scoop does.
  const grip = o.dynamicPressure > 100 ? 0.45 : 0.09;
  return 1 - grip * (1 - o.exit) ** 1.25;
}

interface Conductances {
  /** coolant to air with the thermostat fully open, W/K, skin apart */
  radiator: number;
  skin: number;
  oilToAir: number;
  headToCoolant: number;
}

function conductances(o: Operation): Conductances {
  const h = OUZEL_HEAT;
  if (o.engineSpeed <= 0) {
    const stopped = h.radiator * h.radiatorStopped * (o.fan ? 2 : 1);
    return {
      radiator: stopped,
      skin: h.skinStopped,
      oilToAir: h.oilSkinStopped,
      headToCoolant: h.headToCoolantStopped,
    };
  }
  const flow = ductFlow(o);
  return {
    radiator: h.radiator * flow * doorShare(o) - h.skin,
    skin: h.skin,
    oilToAir: h.oilCooler * flow ** 0.9,
    headToCoolant: h.headToCoolant,
  };
}

/** How far the thermostat is open at a wax temperature, 0..1. */
export function thermostat(wax: number): number {
  const { thermostatStart, thermostatOpen } = OUZEL_HEAT;
  return Math.min(1, Math.max(0, (wax - thermostatStart) / (thermostatOpen - thermostatStart)));
}

/** One step in time (second-order Runge-Kutta; stable to well over the steps used, 0.5 s). */
export function stepHeat(state: HeatState, o: Operation, seconds: number): HeatState {
  const half = advance(state, heatRates(state, o), seconds / 2);
  return advance(state, heatRates(half, o), seconds);
}

function heatRates(s: HeatState, o: Operation): HeatState {
  const h = OUZEL_HEAT;
  const g = conductances(o);
  const running = o.engineSpeed > 0;
  const heat = coolantHeat(o.engineSpeed, o.power);
  const release = running ? 0 : s.stored / h.storedRelease;
  const fromHead = g.headToCoolant * (s.head - s.coolant);
  const fromOil = h.oilToCoolant * (s.oil - s.coolant);
  const toAir = (thermostat(s.wax) * g.radiator + g.skin) * (s.coolant - o.air);
  return {
    coolant: (fromHead + fromOil - toAir) / h.coolantCapacity,
    head: (heat + release - fromHead) / h.headCapacity,
    oil: (h.oilShare * heat - fromOil - g.oilToAir * (s.oil - o.air)) / h.oilCapacity,
    stored: running
      ? (h.storedAtReference * Math.sqrt(heat / REFERENCE_HEAT) - s.stored) / h.storedGain
      : -s.stored / h.storedRelease,
    wax: (s.coolant - s.wax) / h.waxLag,
  };
}

function advance(s: HeatState, rate: HeatState, seconds: number): HeatState {
  return {
    coolant: s.coolant + rate.coolant * seconds,
    head: s.head + rate.head * seconds,
    oil: s.oil + rate.oil * seconds,
    stored: s.stored + rate.stored * seconds,
    wax: s.wax + rate.wax * seconds,
  };
}

/** Everything cold, as the air. */
export function coldState(air: number): HeatState {
  return { coolant: air, head: air, oil: air, stored: 0, wax: air };
}

/**
 * Where the whole model would settle if this operation were held for ever: coolant and oil, K.
 * @param o the held condition
 * @param forceOpen true: as if the thermostat stood fully open
 */
export function steadyHeat(o: Operation, forceOpen = false): HeatState {
  const h = OUZEL_HEAT;
  const g = conductances(o);
  const heat = coolantHeat(o.engineSpeed, o.power);
  const oilAt = (coolant: number) =>
    (h.oilShare * heat + h.oilToCoolant * coolant + g.oilToAir * o.air) / (h.oilToCoolant + g.oilToAir);
  // Surplus of heat falls with coolant temperature throughout: bisection finds the one root.
  let [low, high] = [o.air, o.air + 400];
  for (let i = 0; i < 80; i += 1) {
    const coolant = (low + high) / 2;
    const open = forceOpen ? 1 : thermostat(coolant);
    const surplus =
      heat + h.oilToCoolant * (oilAt(coolant) - coolant) - (open * g.radiator + g.skin) * (coolant - o.air);
    if (surplus > 0) low = coolant;
    else high = coolant;
  }
  const coolant = (low + high) / 2;
  return { coolant, head: coolant + heat / g.headToCoolant, oil: oilAt(coolant), stored: 0, wax: coolant };
}

/**
 * Time constants of the linear model with the thermostat fully open: fast (head against coolant), main (coolant to
 * air), slow (oil and block), s, ascending. The main one is what a single exponential of the coolant sees.
 */
export function heatTimeConstants(o: Operation): { fast: number; main: number; slow: number } {
  const h = OUZEL_HEAT;
  const g = conductances(o);
  // Symmetric form of -C^-1 K: eigenvalues by the trigonometric solution of the cubic.
  const a = (g.headToCoolant + h.oilToCoolant + g.radiator + g.skin) / h.coolantCapacity;
  const b = g.headToCoolant / h.headCapacity;
  const c = (h.oilToCoolant + g.oilToAir) / h.oilCapacity;
  const p = g.headToCoolant / Math.sqrt(h.coolantCapacity * h.headCapacity);
  const q = h.oilToCoolant / Math.sqrt(h.coolantCapacity * h.oilCapacity);
  const mean = (a + b + c) / 3;
  const spread = Math.sqrt(((a - mean) ** 2 + (b - mean) ** 2 + (c - mean) ** 2 + 2 * (p * p + q * q)) / 6);
  const [x, y, z] = [(a - mean) / spread, (b - mean) / spread, (c - mean) / spread];
  const determinant = x * y * z - z * (p / spread) ** 2 - y * (q / spread) ** 2;
  const angle = Math.acos(Math.min(1, Math.max(-1, determinant / 2))) / 3;
  const largest = mean + 2 * spread * Math.cos(angle);
  const smallest = mean + 2 * spread * Math.cos(angle + (2 * Math.PI) / 3);
  const middle = 3 * mean - largest - smallest;
  return { fast: 1 / largest, main: 1 / middle, slow: 1 / smallest };
}
