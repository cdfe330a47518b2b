/**
 * Story item 8: power-off stalls in three configurations, four entries each. The speed falls along a straight line
 * until the wing lets go; the faster the entry, the lower the speed at the break.
 */
import { fromSi } from '../../analysis/units/index.ts';
import { GRAVITY, SEA_LEVEL_DENSITY } from './air.ts';
import { airData, airDataCsv, OUZEL_AIR_OFFSETS } from './air-data-logger.ts';
import { type FlightState, STEP } from './flight.ts';
import type { Column } from './log-text.ts';
import { degrees, knots } from './manoeuvre.ts';
import { FLAP_ANGLE, indicatedAirspeed, liftCoefficient, MAXIMUM_LIFT, OUZEL, type Shape } from './ouzel.ts';
import { type Random, randomFrom } from './random.ts';
import { wander } from './signals.ts';
import { type Moment, massAt, START_MASS, type StallFlyer, seriesFlyer } from './stall-flyer.ts';

export interface StallRun {
  configuration: string;
  fromSeconds: number;
  breakSeconds: number;
  /** loss of indicated airspeed before the break, m/s per s */
  entryRate: number;
  iasAtBreak: number;
  casAtBreak: number;
  loadFactor: number;
  mass: number;
}

export interface StallSpeed {
  configuration: string;
  /** entered at 1 kt/s, 1 g, at the standard mass */
  standardMass: number;
  ias: number;
  cas: number;
  maximumLift: number;
  /** change of the speed at the break with the rate of entry, m/s per m/s2 (that is, s) */
  speedPerRate: number;
}

export interface StallTruth {
  seed: number;
  massAtFirstRow: number;
  stalls: StallSpeed[];
  runs: StallRun[];
}

export const STALL_SEED = 8101;
const STANDARD_MASS = 1080;
const SPEED_PER_RATE = -0.5;
/** of the speed at the break, from one run to the next, m/s */
const SCATTER = 0.15;
const CONFIGURATIONS: { name: string; shape: Shape }[] = [
  { name: 'clean', shape: { flap: 'up', gearDown: false } },
  { name: 'take-off flap', shape: { flap: 'take-off', gearDown: false } },
  { name: 'landing', shape: { flap: 'landing', gearDown: true } },
];
const ENTRY_RATES = [0.7, 0.95, 1.15, 1.4];
const SECONDS = { before: 9, breaking: 1.4, recovering: 12 };

/** The logger's file and what lies behind it; the same seed gives the same bytes. */
export function stallSeries(options: { seed?: number; noise?: number } = {}) {
  const seed = options.seed ?? STALL_SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'stall series');
  const states: FlightState[] = [];
  const moments: Moment[] = [];
  const runs: StallRun[] = [];
  const fly = seriesFlyer(states, moments);
  for (const { name, shape } of CONFIGURATIONS)
    for (const rate of ENTRY_RATES) runs.push(stallOnce(fly, states, name, shape, knots(rate), random, noise));
  const stalls = CONFIGURATIONS.map(({ name, shape }) => {
    const cas = stallingCas(shape, STANDARD_MASS);
    const ias = indicatedAirspeed(cas, liftCoefficient(cas, STANDARD_MASS), shape.flap);
    return {
      configuration: name,
      standardMass: STANDARD_MASS,
      ias,
      cas,
      maximumLift: MAXIMUM_LIFT[shape.flap],
      speedPerRate: SPEED_PER_RATE,
    };
  });
  const logged = airData(states, random.stream('logger'), {
    startUtcMillis: Date.UTC(2031, 4, 17, 9, 20, 5),
    offsets: OUZEL_AIR_OFFSETS,
    noise,
    more: moreColumns(states, moments, random.stream('more'), noise),
  });
  const truth: StallTruth = { seed, massAtFirstRow: START_MASS, stalls, runs };
  return { csv: () => airDataCsv(logged), logged, states, truth };
}

/** Calibrated airspeed at the break of a 1 kt/s entry at 1 g. */
const stallingCas = (shape: Shape, mass: number): number =>
  Math.sqrt((2 * mass * GRAVITY) / (SEA_LEVEL_DENSITY * OUZEL.wingArea * MAXIMUM_LIFT[shape.flap]));

function stallOnce(
  fly: StallFlyer,
  states: FlightState[],
  configuration: string,
  shape: Shape,
  rate: number,
  random: Random,
  noise: number,
): StallRun {
  const now = () => states.length * STEP;
  const mass = massAt(states.length);
  const cas = stallingCas(shape, mass);
  const atOneKnot = indicatedAirspeed(cas, liftCoefficient(cas, mass), shape.flap);
  const iasAtBreak = atOneKnot + SPEED_PER_RATE * (rate - knots(1)) + noise * SCATTER * random.normal();
  // A whole number of steps above the break, so that a sample falls on it.
  const steps = Math.round((1.32 * atOneKnot - iasAtBreak) / (rate * STEP));
  const start = iasAtBreak + steps * rate * STEP;
  const unsteady = wander(random, 0.012 * noise, 1.5, STEP);
  const fromSeconds = now();
  const calm = (ias: number): Moment => {
    const slow = start / ias;
    return {
      ias,
      loadFactor: 1,
      pitch: degrees(4 + 22 * (slow - 1)),
      pitchRate: 0,
      elevator: -degrees(2 + 45 * (slow - 1)),
      marked: false,
      climbRate: -1.2 * slow,
    };
  };
  for (let t = 0; t < SECONDS.before; t += STEP) fly(shape, { ...calm(start), loadFactor: 1 + unsteady() });
  let before = calm(start).pitch;
  for (let k = 1; k < steps; k += 1) {
    const moment = calm(start - k * rate * STEP);
    fly(shape, { ...moment, loadFactor: 1 + unsteady(), pitchRate: (moment.pitch - before) / STEP });
    before = moment.pitch;
  }
  fly(shape, { ...calm(iasAtBreak), loadFactor: 1 });
  const breakSeconds = now() - STEP;
  const last = states[states.length - 1];
  if (!last) throw new RangeError('a stall without rows');
  let pitch = before;
  for (let t = STEP; t <= SECONDS.breaking; t += STEP) {
    const depth = Math.sin((Math.PI * t) / SECONDS.breaking);
    pitch -= degrees(13) * depth * STEP;
    const moment = calm(iasAtBreak);
    fly(shape, {
      ...moment,
      ias: iasAtBreak + 0.4 * t * t,
      loadFactor: 1 - 0.32 * depth + unsteady(),
      pitch,
      pitchRate: -degrees(13) * depth,
      elevator: moment.elevator + degrees(10) * (t / SECONDS.breaking),
      marked: t > 0.5 && t < 0.9,
      climbRate: -4 - 5 * (t / SECONDS.breaking),
    });
  }
  for (let t = STEP; t <= SECONDS.recovering; t += STEP) {
    const share = t / SECONDS.recovering;
    const speed = iasAtBreak + 0.8 + (start - iasAtBreak - 0.8) * Math.min(1, 1.6 * share);
    const pulled = 1 + 0.25 * Math.sin(Math.PI * Math.min(1, share * 2));
    const moment = calm(speed);
    fly(shape, {
      ...moment,
      loadFactor: pulled + unsteady(),
      pitch: pitch + (moment.pitch - pitch) * share,
      pitchRate: (moment.pitch - pitch) / SECONDS.recovering,
      climbRate: -9 + 17 * share,
    });
  }
  return {
    configuration,
    fromSeconds,
    breakSeconds,
    entryRate: rate,
    iasAtBreak,
    casAtBreak: last.cas,
    loadFactor: 1,
    mass,
  };
}

function moreColumns(states: FlightState[], moments: Moment[], random: Random, noise: number): Column[] {
  const shake = (size: number) => noise * size * random.normal();
  const column = (value: (moment: Moment, state: FlightState) => number) =>
    Float64Array.from(moments, (moment, i) => {
      const state = states[i];
      return state ? value(moment, state) : Number.NaN;
    });
  const angle = (si: number, size: number) => fromSi(si, 'deg') + shake(size);
  return [
    { header: 'Normal accel [g]', step: 0.01, values: column((m) => m.loadFactor + shake(0.012)) },
    { header: 'Pitch [deg]', step: 0.1, values: column((m) => angle(m.pitch, 0.2)) },
    { header: 'Pitch rate [deg/s]', step: 0.1, values: column((m) => angle(m.pitchRate, 0.4)) },
    { header: 'Elevator position [deg]', step: 0.1, values: column((m) => angle(m.elevator, 0.1)) },
    { header: 'Flap [deg]', step: 1, values: column((_, s) => fromSi(FLAP_ANGLE[s.shape.flap], 'deg')) },
    { header: 'Event mark', step: 1, values: column((m) => (m.marked ? 1 : 0)) },
  ];
}
