/**
 * Simulated sawtooth climbs with their truth, made by formulas of their own: the product's functions stand nowhere in
 * them. A point mass with a drag polar and a propeller climbs by its energy through air that gusts (Dryden: first order
 * along, second order across and up), rises and sinks over a minute, and blows harder with height. The pilot comes from
 * level flight at another speed, overshoots, wanders, and calls himself on speed; probes lag, recorders step.
 */
import { type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { type ClimbAirplane, climbAirplane, excessPower, heldRate, tasOf } from './climb-airplane.ts';
import { flownTable } from './flown-table.ts';
import { G, LENGTH_SCALE, lateral, pressureOf, stepped, wandering } from './own-air.ts';

export interface ClimbPlan {
  propeller: 'fixed' | 'constant-speed';
  /** calibrated airspeeds as shares of that of the best rate */
  speeds: readonly number[];
  /** pressure altitudes at the middle of the bands, m */
  bands: readonly number[];
  /** climbs on opposite headings at each speed, or one alone */
  pairs: boolean;
  /** from the call on, s */
  seconds: number;
  /** standard deviations: gusts along and across, gusts up, air that rises or sinks over a minute, m/s */
  gust: number;
  gustUp: number;
  lift: number;
  /** growth of the wind with height, 1/s */
  shear: number;
  /** speed lost (or, negative, gained) along each climb after the call, m/s */
  drift?: number;
  /** recorder steps: airspeed kt, height ft, air K */
  steps: { airspeed: number; height: number; air: number };
  /** U95 stated for the instruments, from which their errors are drawn; gain of the altimeter as a share */
  stated: { airspeed: number; gain: number; air: number; mass: number };
  rateHz: number;
}

export interface FlownClimb {
  /** from the pilot's call to the level-off, s from the first record */
  fromSeconds: number;
  toSeconds: number;
  /** slope of true height over that time, m/s */
  rate: number;
  /** rate in still air at this speed held, standard day at this density, standard mass, m/s */
  standard: number;
}

export interface FlownClimbs {
  recording: Recording;
  climbs: FlownClimb[];
  airplane: ClimbAirplane;
  /** stated mass at the first record, kg: off by its draw */
  startMass: number;
}

const KNOT = toSi(1, 'kt');
const STEP = 0.5;
const WARM_UP = 60;

export function flyClimbs(plan: ClimbPlan, seed: number | string): FlownClimbs {
  const random = seededRandom(seed);
  const airplane = climbAirplane(plan.propeller, random);
  const offStandard = 8 * random.normal();
  const flight = airborne(plan, random, airplane, offStandard);
  const climbs: FlownClimb[] = [];
  const ways = plan.pairs ? [0.4, 0.4 + Math.PI] : [0.4];
  for (const band of plan.bands) {
    for (const share of plan.speeds) {
      for (const heading of ways) {
        const target = share * airplane.bestSpeed(band);
        const half = (plan.seconds / 2 + 25) * heldRate(airplane, target, band, airplane.standardMass);
        flight.descend(Math.max(300, band - half), target + KNOT * (6 + 10 * random.uniform()), heading);
        climbs.push(flight.climb(target));
      }
    }
  }
  flight.descend(300, 45, 0.4);
  return {
    recording: recordingOf([flownTable(flight.columns, flight.t, plan.rateHz)]),
    climbs,
    airplane,
    startMass: airplane.mass + (plan.stated.mass / 2) * random.normal(),
  };
}

function airborne(plan: ClimbPlan, random: Random, airplane: ClimbAirplane, offStandard: number) {
  const temperature = (Hp: number) => 288.15 - 0.0065 * Hp + offStandard;
  const off = {
    airspeed: (plan.stated.airspeed / 2) * random.normal(),
    gain: (plan.stated.gain / 2) * random.normal(),
    air: (plan.stated.air / 2) * random.normal(),
  };
  const lag = { airspeed: 0.3 + random.uniform(), air: 5 + 6 * random.uniform() };
  const along = wandering(random, LENGTH_SCALE / 42, plan.gust);
  const across = lateral(random, LENGTH_SCALE / 42, plan.gust);
  const up = lateral(random, LENGTH_SCALE / 42, plan.gustUp);
  const lift = wandering(random, 60, plan.lift);
  const pilot = wandering(random, 12, 0.35);
  const swing = { period: 20 + 12 * random.uniform(), phase: 2 * Math.PI * random.uniform() };
  const windFrom = 2 * Math.PI * random.uniform();
  const windSpeed = 10 * random.uniform();
  const power = wandering(random, 40, 0.003);
  // a second-order hand: comes to a speed in some 10 s and overshoots a little
  const hand = { time: 7 + 4 * random.uniform(), lag: 2 + 3 * random.uniform() };
  const s = {
    Hp: 800,
    h: 800,
    cas: 45,
    tas: tasOf(45, pressureOf(800), temperature(800)),
    a: 0,
    burnt: 0,
    heading: 0.4,
    ias: 45,
    air: temperature(800),
    wind: 0,
    gone: -1,
  };
  let clock = 0;
  const t: number[] = [];
  const truth: { t: number; h: number; cas: number; Hp: number }[] = [];
  const columns: Record<string, number[]> = Object.fromEntries(
    [
      'indicated-airspeed',
      'pressure-altitude',
      'outside-air-temperature',
      'heading-magnetic',
      'roll-angle',
      'fuel-flow',
    ].map((name) => [name, []]),
  );
  const bank = wandering(random, 6, 0.012);

  // One step with a wanted airspeed and a given share of climb power, or at a given vertical speed.
  const step = (wanted: number, vertical: { climb: true } | { rate: number }) => {
    const T = temperature(s.Hp);
    const p = pressureOf(s.Hp);
    const tas = tasOf(s.cas, p, T);
    const gust = { along: along(STEP), across: across(STEP), up: up(STEP), lift: lift(STEP) };
    const meant = wanted + 0.25 * Math.sin((2 * Math.PI * clock) / swing.period + swing.phase) + pilot(STEP);
    s.a += ((Math.max(-0.7, Math.min(0.7, (meant - s.cas) / hand.time)) - s.a) * STEP) / hand.lag;
    s.cas += s.a * STEP;
    // Headwind by height and gusts: what the airplane gains against moving air it need not give by its own inertia.
    const headwind = (windSpeed + plan.shear * (s.h - 1000)) * Math.cos(windFrom - s.heading) + gust.along;
    const inertial = (tas - s.tas) / STEP - (Number.isNaN(s.wind) ? 0 : (headwind - s.wind) / STEP);
    s.wind = headwind;
    s.tas = tas;
    const rho = p / (287.05287 * T);
    const mass = airplane.mass - s.burnt;
    const still =
      'climb' in vertical
        ? excessPower(airplane, tas, rho, mass, 1 + power(STEP)) - (tas / G) * inertial
        : vertical.rate;
    const rate = still + gust.up + gust.lift;
    s.h += rate * STEP;
    s.Hp += (rate * STEP * (288.15 - 0.0065 * s.Hp)) / T;
    s.burnt += airplane.fuelFlow * STEP;
    clock += STEP;
    truth.push({ t: clock, h: s.h, cas: s.cas, Hp: s.Hp });
    s.ias += (s.cas - s.ias) * Math.min(1, STEP / lag.airspeed);
    s.air += (temperature(s.Hp) - s.air) * (STEP / lag.air);
    if (clock - s.gone < 1 / plan.rateHz - 1e-9) return;
    s.gone = clock;
    const write = (name: string, value: number, unit: string, size: number) =>
      columns[name]?.push(stepped(value, unit, size));
    t.push(clock);
    write('indicated-airspeed', s.ias + off.airspeed + 0.13 * random.normal(), 'kt', plan.steps.airspeed);
    write('pressure-altitude', s.Hp * (1 + off.gain) + 0.7 * random.normal(), 'ft', plan.steps.height);
    write('outside-air-temperature', s.air + off.air + 0.1 * random.normal(), 'degC', plan.steps.air);
    write('heading-magnetic', s.heading + gust.across / tas + 0.01 * random.normal(), 'deg', 1);
    columns['roll-angle']?.push(bank(STEP) + 0.005 * random.normal());
    columns['fuel-flow']?.push(airplane.fuelFlow / 720);
  };

  const descend = (to: number, speed: number, heading: number) => {
    while (s.Hp > to) step(speed + 5, { rate: -4 });
    while (s.Hp < to - 20) step(speed, { climb: true });
    s.heading = heading;
    s.wind = Number.NaN;
    for (let i = 0; i < WARM_UP / STEP; i += 1) step(speed, { rate: 0 });
  };
  const climb = (target: number): FlownClimb => {
    let near = 0;
    // On speed: within a knot for five seconds, and not before half a minute is over.
    for (let i = 0; i < 200 && (i * STEP < 30 || near * STEP < 5); i += 1) {
      step(target, { climb: true });
      near = Math.abs(s.cas - target) < KNOT ? near + 1 : 0;
    }
    const first = truth.length;
    const steps = plan.seconds / STEP;
    for (let i = 0; i < steps; i += 1) step(target - ((plan.drift ?? 0) * i) / steps, { climb: true });
    const run = truth.slice(first);
    for (let i = 0; i < 20; i += 1) step(target + 8, { rate: 0 });
    const mean = (of: (one: (typeof run)[number]) => number) => run.reduce((sum, one) => sum + of(one) / run.length, 0);
    const [mt, mh, Hp] = [mean((one) => one.t), mean((one) => one.h), mean((one) => one.Hp)];
    const slope =
      run.reduce((sum, one) => sum + (one.t - mt) * (one.h - mh), 0) /
      run.reduce((sum, one) => sum + (one.t - mt) ** 2, 0);
    const rho = pressureOf(Hp) / (287.05287 * temperature(Hp));
    return {
      fromSeconds: (run[0]?.t ?? 0) - (t[0] ?? 0),
      toSeconds: (run.at(-1)?.t ?? 0) - (t[0] ?? 0),
      rate: slope,
      standard: heldRate(
        airplane,
        mean((one) => one.cas),
        densityHeight(rho),
        airplane.standardMass,
      ),
    };
  };
  return { t, columns, descend, climb };
}

/** Height at which the standard day has this density, m. */
export function densityHeight(rho: number): number {
  let [low, high] = [-2000, 9000];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (pressureOf(middle) / (287.05287 * (288.15 - 0.0065 * middle)) > rho) low = middle;
    else high = middle;
  }
  return low;
}
