/** The airplane of the simulated climbs: polar, engine, propeller; its rates and best speeds by looking at every one. */
import type { Random } from '../../analysis/numbers/index.ts';
import { G, pressureOf, ram, SEA, sound, speedOfRam } from './own-air.ts';

export interface ClimbAirplane {
  propeller: 'fixed' | 'constant-speed';
  S: number;
  span: number;
  e: number;
  drag: number;
  /** W of engine power at sea level */
  power: number;
  /** kg at the first record, and the mass rates are brought to */
  mass: number;
  standardMass: number;
  /** kg/s in the climb */
  fuelFlow: number;
  /** calibrated airspeed of the best rate at a height of the standard day, m/s */
  bestSpeed(height: number): number;
}

const RHO0 = 101325 / (287.05287 * 288.15);

export function climbAirplane(propeller: 'fixed' | 'constant-speed', random: Random): ClimbAirplane {
  const airplane = {
    propeller,
    S: 12 + 2 * random.uniform(),
    span: 9 + random.uniform(),
    // as far from 0.75 as the reduction assumes it may be
    e: 0.75 + 0.05 * random.normal(),
    drag: 0.026 + 0.006 * random.uniform(),
    power: 115e3 + 30e3 * random.uniform(),
    mass: 1000 + 60 * random.uniform(),
    standardMass: 1080,
    fuelFlow: 0.008,
  };
  const best = (height: number): number =>
    speeds().reduce((top, cas) => {
      return heldRate(airplane, cas, height, airplane.standardMass) >
        heldRate(airplane, top, height, airplane.standardMass)
        ? cas
        : top;
    }, 30);
  const known = new Map<number, number>();
  return {
    ...airplane,
    bestSpeed: (height) => {
      const found = known.get(height) ?? best(height);
      known.set(height, found);
      return found;
    },
  };
}

const speeds = () => Array.from({ length: 601 }, (_, i) => 24 + 0.07 * i);

type Flying = Omit<ClimbAirplane, 'bestSpeed'>;

/** Rate of climb in still air with true airspeed held, m/s. */
export function excessPower(airplane: Flying, tas: number, rho: number, mass: number, share = 1): number {
  const lift = mass * G;
  const q = 0.5 * rho * tas * tas;
  const induced = (lift / (q * airplane.S)) ** 2 / ((Math.PI * airplane.span ** 2 * airplane.e) / airplane.S);
  const engine = airplane.power * (1.132 * (rho / RHO0) - 0.132) * share;
  // Constant speed: efficiency that levels off. Fixed: turns, and with them power, rise with speed towards cruise.
  const useful = airplane.propeller === 'fixed' ? 0.8 * (1 - ((tas - 58) / 80) ** 2) : 0.86 * (1 - Math.exp(-tas / 27));
  return (engine * useful - q * airplane.S * (airplane.drag + induced) * tas) / lift;
}

/** True airspeed of a calibrated one, m/s. */
export const tasOf = (cas: number, p: number, T: number): number => speedOfRam(ram(cas, SEA.a, SEA.p), sound(T), p);

/** The same with calibrated airspeed held, on the standard day at a height, m/s. */
export function heldRate(airplane: Flying, cas: number, height: number, mass: number): number {
  const day = (h: number) => ({ p: pressureOf(h), T: 288.15 - 0.0065 * h });
  const tas = (h: number) => tasOf(cas, day(h).p, day(h).T);
  const here = day(height);
  const grows = (tas(height + 20) - tas(height - 20)) / 40;
  const V = tas(height);
  return excessPower(airplane, V, here.p / (287.05287 * here.T), mass) / (1 + (V / G) * grows);
}

/** Truth of a band: speeds of best rate and steepest climb, calibrated, m/s, and the best rate. */
export function bestOf(airplane: ClimbAirplane, height: number): { Vy: number; Vx: number; rate: number } {
  const at = (cas: number) => heldRate(airplane, cas, height, airplane.standardMass);
  const steep = (cas: number) => at(cas) / tasOf(cas, pressureOf(height), 288.15 - 0.0065 * height);
  const top = (of: (cas: number) => number) => speeds().reduce((best, cas) => (of(cas) > of(best) ? cas : best), 30);
  const Vy = top(at);
  return { Vy, Vx: top(steep), rate: at(Vy) };
}

/** Height of the standard day at which the best rate has fallen to a rate, m. */
export function ceilingOf(airplane: ClimbAirplane, rate: number): number {
  let [low, high] = [0, 15000];
  for (let i = 0; i < 20; i += 1) {
    const middle = (low + high) / 2;
    if (bestOf(airplane, middle).rate > rate) low = middle;
    else high = middle;
  }
  return low;
}
