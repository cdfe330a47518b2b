/**
 * Cooling climbs of airplanes nobody built, for testing what the reduction says against what was put in. One lump with a
 * radiator behind a lagging thermostat; its heat and its cooling follow the air's density by laws drawn for each flight,
 * so that the same climb can be flown again on the hot day, which is the truth a corrected peak is held against. Written
 * for the tests: it shares no formula with the code under test.
 */
import { type LogChannel, type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { toSi } from '../../analysis/units/index.ts';

export interface ClimbDay {
  /** fully open at climb power at sea level: over air, K, and time constant, s */
  excess: number;
  tau: number;
  /** share of it at the power flown before */
  before: number;
  thermostat: { start: number; open: number } | null;
  /** pressure altitudes, m, and rate at the bottom, m/s */
  from: number;
  to: number;
  rate: number;
  /** range of the day against the hot day, K colder at sea level */
  colder: readonly [number, number];
  /** change of that from bottom to top, K: an inversion or a steep lapse */
  lapse: number;
  /** rms of the air's own structure, K, over some hundred metres */
  structure: number;
  rateHz: number;
  /** recording step of hot temperatures, K, and white noise, K */
  step: number;
  white: number;
  /** rms of the radiator's air flow and its correlation time, s */
  gust: number;
  gustSeconds: number;
  /** airspeed wander, rms, kt */
  wander: number;
  lag: number;
  /** the air probe's lag is drawn up to this, s; its recovery factor is drawn in the band given */
  airLag: number;
  recovery: readonly [number, number];
  /** half-widths (95 %) sensor errors are drawn from, K, K and m */
  sensorU95: number;
  airU95: number;
  heightU95: number;
  /** standard deviation from climb to climb, K at the peak */
  runScatter: number;
  part: 'coolant-temperature' | 'cylinder-head-temperature#1';
  /** seconds flown before the climb, and level after it */
  beforeSeconds: number;
  without: readonly string[];
}

export interface ClimbTruth {
  /** of this climb, without sensors, K and s */
  peak: number;
  peakSeconds: number;
  airAtPeak: number;
  /** peak of the same climb on the hot day, flown without gusts and without this flight's own offset, K */
  hotPeak: number;
  fromSeconds: number;
  toSeconds: number;
}

export interface SimulatedClimb {
  recording: Recording;
  truth: ClimbTruth;
}

const TICK = 0.5;
const WAX = 15;
const SKIN = 0.08;
const SPEED_KT = 90;
const HOT_SEA_LEVEL = toSi(100, 'degF');
const HOT_LAPSE = (toSi(100, 'degF') - toSi(96.4, 'degF')) / toSi(1000, 'ft');

const standardAir = (H: number) => 288.15 - 0.0065 * H;
const pressure = (H: number) => 101325 * (standardAir(H) / 288.15) ** 5.25588;
const hotAir = (H: number) => HOT_SEA_LEVEL - HOT_LAPSE * H;

interface Laws {
  /** share of the sea-level heat at a height and a density */
  heat: (H: number, rho: number) => number;
  /** conductance goes with density to this power */
  cooling: number;
  /** share this climb's equilibrium differs by */
  offset: number;
}

interface Moment {
  t: number;
  H: number;
  T: number;
  air: number;
  kt: number;
  climbing: boolean;
  rpm: number;
}

/** Fly it: the trace second by second in air that is a function of height. */
function fly(
  day: ClimbDay,
  laws: Laws,
  airAt: (H: number) => number,
  gust: (dt: number) => number,
  wander: (dt: number) => number,
): Moment[] {
  const list: Moment[] = [];
  const factor = (air: number, H: number) => pressure(H) / (287.053 * air) / 1.225;
  const equilibrium = (share: number, H: number) =>
    airAt(H) +
    (share * day.excess * (1 + laws.offset) * laws.heat(H, factor(airAt(H), H))) / factor(airAt(H), H) ** laws.cooling;
  // stabilised before it: where heat and the thermostat balance
  let T = equilibrium(day.before, day.from);
  if (day.thermostat)
    T = Math.max(
      T,
      balanced(
        day,
        laws,
        airAt(day.from),
        factor(airAt(day.from), day.from),
        laws.heat(day.from, factor(airAt(day.from), day.from)),
      ),
    );
  let wax = T;
  let H = day.from;
  const climbFrom = day.beforeSeconds;
  for (let t = 0; ; t += TICK) {
    const climbing = t >= climbFrom && H < day.to;
    const kt = SPEED_KT + wander(TICK);
    const air = airAt(H);
    const rho = factor(air, H);
    const share = t >= climbFrom ? Math.min(1, day.before + ((1 - day.before) * (t - climbFrom)) / 8) : day.before;
    const power = H >= day.to ? 0.7 : share;
    const valve = openingOf(day, wax);
    const flow = (1 + gust(TICK)) * (kt / SPEED_KT) ** 0.8;
    const heat = (power * day.excess * (1 + laws.offset) * laws.heat(H, rho)) / day.tau;
    const conductance = ((valve * (1 - SKIN) * flow + SKIN) * rho ** laws.cooling) / day.tau;
    T += TICK * (heat - conductance * (T - air));
    wax += (TICK * (T - wax)) / WAX;
    list.push({ t, H, T, air, kt, climbing, rpm: t >= climbFrom ? 5000 : 4300 });
    if (climbing) H += TICK * day.rate * Math.max(0.3, 1 - H / 7000) * (1 + 0.2 * (gust(0) || 0));
    const since = list.findLast((one) => one.climbing);
    if (H >= day.to && since && t - since.t > 90) return list;
  }
}

function balanced(day: ClimbDay, laws: Laws, air: number, rho: number, full: number): number {
  let [low, high] = [air, air + 300];
  for (let i = 0; i < 60; i += 1) {
    const T = (low + high) / 2;
    const heat = day.before * day.excess * (1 + laws.offset) * full;
    const out = (openingOf(day, T) * (1 - SKIN) + SKIN) * rho ** laws.cooling * (T - air);
    if (heat > out) low = T;
    else high = T;
  }
  return (low + high) / 2;
}

function openingOf({ thermostat }: ClimbDay, wax: number): number {
  if (!thermostat) return 1;
  return Math.min(1, Math.max(0, (wax - thermostat.start) / (thermostat.open - thermostat.start)));
}

export function simulateClimb(day: ClimbDay, seed: number | string): SimulatedClimb {
  const random = seededRandom(`cooling climb ${seed}`);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  // half the engines lose their heat with the air, half hold it to a critical altitude and lose it with pressure above
  const critical = between(900, 1800);
  const power = between(0.8, 1);
  const boosted = random.uniform() < 0.5;
  const heat = (H: number, rho: number) =>
    boosted ? Math.min(1, (pressure(H) / pressure(critical)) ** power) : rho ** power;
  const laws: Laws = { heat, cooling: between(0.4, 0.8), offset: (day.runScatter / day.excess) * random.normal() };
  const colder = between(day.colder[0], day.colder[1]);
  const structure = airStructure(random, day);
  const span = day.to - day.from;
  const airAt = (H: number) => hotAir(H) - colder + (day.lapse * (H - day.from)) / span + structure(H);
  const flown = fly(day, laws, airAt, wanderOf(random, day.gust, day.gustSeconds), wanderOf(random, day.wander, 40));
  const nominal = fly(
    day,
    { ...laws, offset: 0 },
    hotAir,
    () => 0,
    () => 0,
  );
  const inClimb = flown.filter((one) => one.climbing);
  const top = inClimb.reduce((best, one) => (one.T > best.T ? one : best));
  const hot = nominal.filter((one) => one.climbing).reduce((best, one) => (one.T > best.T ? one : best));
  return {
    recording: recorded(day, flown, random, boosted ? critical : null),
    truth: {
      peak: top.T,
      peakSeconds: top.t,
      airAtPeak: top.air,
      hotPeak: hot.T,
      fromSeconds: inClimb[0]?.t ?? 0,
      toSeconds: inClimb[inClimb.length - 1]?.t ?? 0,
    },
  };
}

/** Layers some hundred metres thick, fixed for the day. */
function airStructure(random: Random, day: ClimbDay): (H: number) => number {
  const step = 150;
  const n = Math.ceil((day.to - day.from) / step) + 3;
  let x = day.structure * random.normal();
  const values = Array.from({ length: n }, () => {
    x = 0.6 * x + 0.8 * day.structure * random.normal();
    return x;
  });
  return (H) => {
    const at = Math.max(0, (H - day.from) / step);
    const i = Math.min(n - 2, Math.floor(at));
    return (values[i] ?? 0) + ((values[i + 1] ?? 0) - (values[i] ?? 0)) * (at - i);
  };
}

function wanderOf(random: Random, size: number, seconds: number) {
  let x = size * random.normal();
  return (dt: number) => {
    const keep = Math.exp(-dt / seconds);
    x = keep * x + size * Math.sqrt(1 - keep * keep) * random.normal();
    return x;
  };
}

function recorded(day: ClimbDay, flown: readonly Moment[], random: Random, critical: number | null): Recording {
  const sensor = (day.sensorU95 / 2) * random.normal();
  const probe = (day.airU95 / 2) * random.normal();
  const altimeter = (day.heightU95 / 2) * random.normal();
  const airLag = day.airLag * random.uniform();
  const recovery = day.recovery[0] + (day.recovery[1] - day.recovery[0]) * random.uniform();
  const rounded = (value: number, step: number) => Math.round(value / step) * step;
  const zero = toSi(0, 'degC');
  const every = Math.round(1 / day.rateHz / TICK);
  let read = flown[0]?.T ?? 0;
  let warm = Number.NaN;
  const rows = flown.flatMap((one, i) => {
    const tas = toSi(one.kt, 'kt') * Math.sqrt((101325 / pressure(one.H)) * (one.air / 288.15));
    const atProbe = one.air + (recovery * tas ** 2) / (2 * 1004.7);
    read += (TICK * (one.T - read)) / Math.max(TICK, day.lag);
    warm = Number.isNaN(warm) ? atProbe : warm + (TICK * (atProbe - warm)) / Math.max(TICK, airLag);
    if (i % every !== 0) return [];
    return [
      {
        t: one.t,
        hot: zero + rounded(read - zero + sensor + day.white * random.normal(), day.step),
        air: zero + rounded(warm - zero + probe + 0.2 * random.normal(), 0.5),
        height: rounded(one.H + altimeter + 1.5 * random.normal(), 0.5),
        ias: toSi(one.kt, 'kt') + 0.2 * random.normal(),
        manifold:
          critical === null
            ? 0.97 * pressure(one.H)
            : 1.2 * Math.min(101325, (101325 * pressure(one.H)) / pressure(critical)),
        rpm: rounded(one.rpm + 8 * random.normal(), 10) / 60,
      },
    ];
  });
  const columns: Record<string, (row: (typeof rows)[number]) => number> = {
    [day.part]: (row) => row.hot,
    'outside-air-temperature': (row) => row.air,
    'pressure-altitude': (row) => row.height,
    'indicated-airspeed': (row) => row.ias,
    'engine-speed': (row) => row.rpm,
    'manifold-pressure': (row) => row.manifold,
  };
  const seconds = Float64Array.from(rows, (row) => row.t);
  return recordingOf([
    {
      file: 'climb.csv',
      sha256: '',
      rows: rows.length,
      time: {
        seconds,
        startUtcMs: null,
        start: null,
        zone: 'unknown',
        durationSeconds: seconds[seconds.length - 1] ?? 0,
        sampleRateHz: day.rateHz,
        segments: [],
      },
      channels: Object.entries(columns)
        .filter(([quantity]) => !day.without.includes(quantity))
        .map(
          ([quantity, value], index): LogChannel => ({
            column: quantity,
            index,
            name: quantity,
            quantity,
            unit: null,
            confidence: 1,
            why: 'simulated',
            values: Float64Array.from(rows, value),
            valid: 1,
            flags: [],
          }),
        ),
      flags: [],
    },
  ]);
}

const C = (degrees: number) => toSi(degrees, 'degC');

/** A day that says nothing special. */
export const PLAIN_CLIMB: ClimbDay = {
  excess: 88,
  tau: 170,
  before: 0.72,
  thermostat: { start: C(75), open: C(82) },
  from: 400,
  to: 2600,
  rate: 5,
  colder: [3, 22],
  lapse: 0,
  structure: 0.3,
  rateHz: 1,
  step: 0.5,
  white: 0.15,
  gust: 0.03,
  gustSeconds: 12,
  wander: 1.5,
  lag: 6,
  airLag: 20,
  recovery: [0.6, 1],
  sensorU95: 1,
  airU95: 0.5,
  heightU95: 12,
  runScatter: 1.5,
  part: 'coolant-temperature',
  beforeSeconds: 240,
  without: ['manifold-pressure'],
};
