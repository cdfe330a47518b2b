/**
 * A simulated airspeed-calibration flight with its truth, made by formulas of its own: the product's functions stand
 * nowhere in it. Gusts have the Dryden spectrum (length scale 533 m above 600 m, from memory): first order along the
 * flight path, second order across. Beside them a wind that drifts and wanders over minutes, a pilot who wanders,
 * lagging probes, recorder steps, and instruments off by their own draw.
 */
import { type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { flownTable } from './flown-table.ts';
import {
  G,
  heightOf,
  LENGTH_SCALE,
  lateral,
  pressureOf,
  ram,
  SEA,
  sound,
  speedOfRam,
  stepped,
  wandering,
} from './own-air.ts';

export interface FlightPlan {
  speeds: number;
  legs: number;
  legSeconds: number;
  /** standard deviation of gusts, m/s */
  gust: number;
  /** wandering wind over minutes, standard deviation, m/s */
  wander: number;
  /** drift of the wind, m/s an hour */
  drift: number;
  /** recorder steps: airspeed kt, height ft, air K, ground speed kt, track degrees */
  steps: { airspeed: number; height: number; air: number; speed: number; track: number };
  /** U95 stated for the instruments, from which their errors are drawn */
  stated: { airspeed: number; height: number; air: number; speed: number };
  rateHz: number;
  /** full turns at each speed instead of legs; 0 for legs */
  turns: number;
}

export interface FlownFlight {
  recording: Recording;
  stated: FlightPlan['stated'];
  /** calibrated airspeed at a reading of the instrument, m/s */
  casAt(reading: number): number;
  /** position error at a reading: calibrated less true indication, m/s */
  positionErrorAt(reading: number): number;
  /** true airspeed at a calibrated one in this air, m/s */
  tasAt(cas: number): number;
  /** mean wind of the legs, to north and east, m/s */
  wind: { north: number; east: number };
  dewPoint: number;
}

const KNOT = toSi(1, 'kt');

export function flyCalibration(plan: FlightPlan, seed: number | string): FlownFlight {
  const random = seededRandom(seed);
  const height = 1000 + 1200 * random.uniform();
  const offStandard = 10 * random.normal();
  const slow = 33 + 5 * random.uniform();
  const fastest = slow * (1.5 + 0.3 * random.uniform());
  const targets = Array.from({ length: plan.speeds }, (_, j) =>
    plan.speeds === 1 ? (slow + fastest) / 2 : slow + ((fastest - slow) * j) / (plan.speeds - 1),
  );
  // Position error by calibrated airspeed: a bent line through draws at both ends and the middle, up to a few knots.
  const [low, mid, high] = [2 * random.normal(), 1 * random.normal(), 1.5 * random.normal()].map((v) => v * KNOT);
  const middle = (slow + fastest) / 2;
  const error = (cas: number) => {
    const x = (cas - middle) / (middle - slow);
    return (mid ?? 0) + (((high ?? 0) - (low ?? 0)) / 2) * x + (((high ?? 0) + (low ?? 0)) / 2 - (mid ?? 0)) * x * x;
  };
  const off = {
    airspeed: (plan.stated.airspeed / 2) * random.normal(),
    height: (plan.stated.height / 2) * random.normal(),
    air: (plan.stated.air / 2) * random.normal(),
    speed: (plan.stated.speed / 2) * random.normal(),
  };
  const T = 288.15 - 0.0065 * height + offStandard;
  const humidity = 0.15 + 0.85 * random.uniform();
  const saturated = 610.78 * Math.exp((17.27 * fromSi(T, 'degC')) / (fromSi(T, 'degC') + 237.3));
  const p = pressureOf(height);
  const Tv = T / (1 - (0.378 * humidity * saturated) / p);
  const tasAt = (cas: number) => speedOfRam(ram(cas, SEA.a, SEA.p), sound(Tv), p);
  const dewRatio = Math.log((humidity * saturated) / 610.78);
  const rows = fly({ plan, random, height, T, Tv, targets, error, off, tasAt });
  const casAt = (reading: number) => {
    const indicated = reading - off.airspeed;
    let cas = indicated;
    for (let i = 0; i < 30; i += 1) cas = indicated + error(cas);
    return cas;
  };
  return {
    recording: recordingOf([flownTable(rows.columns, rows.t, plan.rateHz)]),
    stated: plan.stated,
    casAt,
    positionErrorAt: (reading) => error(casAt(reading)),
    tasAt,
    wind: rows.wind,
    dewPoint: toSi((237.3 * dewRatio) / (17.27 - dewRatio), 'degC'),
  };
}

interface Flying {
  plan: FlightPlan;
  random: Random;
  height: number;
  T: number;
  Tv: number;
  targets: readonly number[];
  error: (cas: number) => number;
  off: { airspeed: number; height: number; air: number; speed: number };
  tasAt: (cas: number) => number;
}

function fly({ plan, random, height, T, Tv, targets, error, off, tasAt }: Flying) {
  const dt = 0.5;
  const windSpeed = 13 * random.uniform();
  const windTo = 2 * Math.PI * random.uniform();
  const driftTo = 2 * Math.PI * random.uniform();
  const lag = {
    airspeed: 0.3 + random.uniform(),
    air: 8 + 6 * random.uniform(),
    satellite: 0.2 + 0.6 * random.uniform(),
  };
  const phase = 2 * Math.PI * random.uniform();
  const period = 18 + 15 * random.uniform();
  const slowWind = [wandering(random, 900, plan.wander), wandering(random, 900, plan.wander)];
  const along = wandering(random, LENGTH_SCALE / 45, plan.gust);
  const across = lateral(random, LENGTH_SCALE / 45, plan.gust);
  const pilot = wandering(random, 12, 0.35);
  const level = wandering(random, 20, 4);
  const hands = wandering(random, 6, 0.012);
  const state = {
    heading: 2 * Math.PI * random.uniform(),
    gone: 0,
    low: 0,
    ias: Number.NaN,
    air: T,
    north: NaN,
    east: NaN,
  };
  const columns: Record<string, number[]> = {
    'indicated-airspeed': [],
    'pressure-altitude': [],
    'outside-air-temperature': [],
    'ground-speed': [],
    'track-true': [],
    'roll-angle': [],
  };
  const t: number[] = [];
  const winds: { north: number; east: number }[] = [];
  let clock = 0;
  let cas = targets[0] ?? 45;
  const step = (target: number, bank: number, onLeg: boolean) => {
    cas += Math.max(-0.25 * dt, Math.min(0.25 * dt, target - cas));
    const wobble = 0.25 * Math.sin((2 * Math.PI * clock) / period + phase) + pilot(dt);
    const gust = { along: along(dt), across: across(dt) };
    state.low += ((gust.along - state.low) * dt) / 10;
    const tas = tasAt(cas + wobble) - (gust.along - state.low);
    state.heading += ((G * Math.tan(bank)) / tas) * dt;
    const [sin, cos] = [Math.sin(state.heading), Math.cos(state.heading)];
    const hours = clock / 3600;
    const wind = {
      north: windSpeed * Math.cos(windTo) + plan.drift * hours * Math.cos(driftTo) + (slowWind[0]?.(dt) ?? 0),
      east: windSpeed * Math.sin(windTo) + plan.drift * hours * Math.sin(driftTo) + (slowWind[1]?.(dt) ?? 0),
    };
    if (onLeg) winds.push(wind);
    const north = (tas + gust.along) * cos - gust.across * sin + wind.north;
    const east = (tas + gust.along) * sin + gust.across * cos + wind.east;
    const trueCas = speedOfRam(ram(tas, sound(Tv), pressureOf(height)), SEA.a, SEA.p);
    const dps = ram(trueCas, SEA.a, SEA.p) - ram(trueCas - error(trueCas), SEA.a, SEA.p);
    const h = height + level(dt);
    follow(state, 'ias', trueCas - error(trueCas), dt / lag.airspeed);
    follow(state, 'air', T, dt / lag.air);
    follow(state, 'north', north, dt / lag.satellite);
    follow(state, 'east', east, dt / lag.satellite);
    clock += dt;
    if (clock - state.gone < 1 / plan.rateHz - 1e-9) return;
    state.gone = clock;
    const [vn, ve] = [state.north + 0.05 * random.normal(), state.east + 0.05 * random.normal()];
    t.push(clock);
    columns['indicated-airspeed']?.push(
      stepped(state.ias + off.airspeed + 0.25 * random.normal(), 'kt', plan.steps.airspeed),
    );
    columns['pressure-altitude']?.push(
      stepped(heightOf(pressureOf(h) + dps) + off.height + random.normal(), 'ft', plan.steps.height),
    );
    columns['outside-air-temperature']?.push(
      stepped(state.air + off.air + 0.1 * random.normal(), 'degC', plan.steps.air),
    );
    columns['ground-speed']?.push(stepped(Math.hypot(vn, ve) + off.speed, 'kt', plan.steps.speed));
    columns['track-true']?.push(stepped((Math.atan2(ve, vn) + 2 * Math.PI) % (2 * Math.PI), 'deg', plan.steps.track));
    columns['roll-angle']?.push(bank + hands(dt) + 0.005 * random.normal());
  };
  const straight = (target: number, seconds: number, onLeg: boolean) => {
    for (let s = 0; s < seconds; s += dt) step(target, 0, onLeg);
  };
  for (const target of targets) {
    straight(target, 10 + Math.abs(target - cas) / 0.2, false);
    const rate = (G * Math.tan(0.35)) / tasAt(target);
    if (plan.turns > 0) {
      straight(target, 15, false);
      for (let s = 0; s < (2 * Math.PI * plan.turns) / rate; s += dt) step(target, 0.35, true);
    }
    for (let leg = 0; leg < (plan.turns > 0 ? 0 : plan.legs); leg += 1) {
      straight(target, 15, false);
      straight(target, plan.legSeconds, true);
      const turn = (2 * Math.PI) / plan.legs + 0.1 * random.normal();
      for (let s = 0; s < turn / rate; s += dt) step(target, 0.35, false);
    }
  }
  const mean = (of: (w: { north: number; east: number }) => number) =>
    winds.reduce((sum, w) => sum + of(w) / winds.length, 0);
  return { t, columns, wind: { north: mean((w) => w.north), east: mean((w) => w.east) } };
}

function follow<K extends string>(state: Record<K, number>, name: K, value: number, share: number): void {
  state[name] = Number.isNaN(state[name]) ? value : state[name] + (value - state[name]) * Math.min(1, share);
}
