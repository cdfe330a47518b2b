/**
 * Flights whose cooling law is known: at each point power, speed and door are held, the temperature follows a law of
 * logarithms with a scatter of its own from point to point. Written for the tests: shares no formula with the code
 * under test but the units.
 */
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { type LogChannel, type Recording, recordingOf } from '../../analysis/logs/index.ts';
import { type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { differenceToSi, toSi } from '../../analysis/units/index.ts';
import { plainAirplane } from './plain-airplane.ts';

export interface FlightLaw {
  /** K over air at 28 L/h, 2000 Pa, door half open */
  excess: number;
  flow: number;
  pressure: number;
  door: number;
  /** what no power law holds: the door's effect bends by this, a share for each unit of its logarithm squared */
  bend: number;
}

export interface FlightCase {
  what: string;
  points: number;
  /** standard deviation of one point, K */
  scatter: number;
  law?: Partial<FlightLaw>;
  /** speed tied to power as in level flight: its own freedom, share */
  level?: number;
  /** starts to open and is fully open here, K; none where left out */
  thermostat?: readonly [number, number];
  /** sensors are exact and readings fine */
  exact?: boolean;
}

export interface FlightPoint {
  flow: number;
  ias: number;
  door: number;
}

export interface SimulatedFlight {
  recording: Recording;
  airplane: Airplane;
  law: FlightLaw;
  points: FlightPoint[];
  /** the same airplane at another setting: what its sensor would read there, settled, without a point's own scatter */
  reads(point: FlightPoint, air: number): number;
  /** indicated airspeed of a true calibrated one, m/s; outside air as read */
  airRead: number;
  random: Random;
}

const LAW: FlightLaw = { excess: 72, flow: 0.62, pressure: -0.33, door: -0.24, bend: 0 };
const FLOW = toSi(28, 'L/h');
const SEA_LEVEL_DENSITY = 1.225;
const HOLD = 300;
const TAU = 70;
const AIR = toSi(22, 'degC');

/** Dynamic pressure of an airspeed at the low speeds flown here, where equivalent and calibrated are one to 0.1 %. */
const pressureOf = (cas: number) => (SEA_LEVEL_DENSITY * cas ** 2) / 2;

function excessOf(law: FlightLaw, { flow, cas, door }: { flow: number; cas: number; door: number }): number {
  const x = Math.log(door / 0.5);
  const logs =
    law.flow * Math.log(flow / FLOW) +
    law.pressure * Math.log(pressureOf(cas) / 2000) +
    law.door * x +
    law.bend * x * x;
  return law.excess * Math.exp(logs);
}

/** One flight of a case; the same seed gives the same flight. */
export function simulateFlight(one: FlightCase, seed: number | string): SimulatedFlight {
  const random = seededRandom(`cooling flight ${one.what} ${seed}`);
  const law = { ...LAW, ...one.law };
  const error = (u95: number) => (one.exact ? 0 : (u95 / 2) * random.normal());
  const sensors = { hot: error(1), air: error(0.5), speed: error(0.25), door: error(0.01), flow: error(0.015) };
  const drawn = Array.from({ length: one.points }, () => flyablePoint(one, law, random));
  // a pilot goes from one temperature to the next, not to and fro: each point then settles in its five minutes
  const points = drawn.sort((a, b) => excessOf(law, { ...a, cas: a.ias }) - excessOf(law, { ...b, cas: b.ias }));
  const rows: number[][] = [];
  const wander = {
    flow: ar(random, 0.004, 20),
    speed: ar(random, 0.5, 15),
    gust: ar(random, 0.15, 20),
    air: ar(random, 0.15, 120),
  };
  let T = AIR + excessOf(law, { ...first(points), cas: first(points).ias });
  for (const point of points) {
    const own = one.scatter * random.normal();
    for (let s = 0; s < HOLD; s += 1) {
      const flow = point.flow * (1 + wander.flow());
      const cas = point.ias + wander.speed();
      const air = AIR + wander.air();
      const wanted = air + own + excessOf(law, { flow, cas, door: point.door });
      T += (regulated(one, wanted, air) - T) / TAU;
      rows.push([
        rounded(T + sensors.hot + wander.gust() + 0.1 * random.normal(), differenceToSi(one.exact ? 0.01 : 0.5, 'dK')),
        rounded(air + sensors.air + 0.1 * random.normal(), differenceToSi(one.exact ? 0.01 : 0.5, 'dK')),
        rounded(flow * (1 + sensors.flow), toSi(0.1, 'L/h')),
        rounded(cas + sensors.speed + 0.2 * random.normal(), toSi(one.exact ? 0.01 : 0.1, 'kt')),
        rounded(point.door + sensors.door, one.exact ? 0.0001 : 0.01),
        rounded(600 + 3 * random.normal(), 1),
      ]);
    }
  }
  return {
    recording: recordingOfRows(rows),
    airplane: airplaneOf(one),
    law,
    points,
    reads: (point, air) => air + excessOf(law, { flow: point.flow, cas: point.ias, door: point.door }) + sensors.hot,
    airRead: AIR + sensors.air,
    random,
  };
}

/** Over air, K: no pilot stays where the gauge runs off its end. */
const HOTTEST = 100;

function flyablePoint(one: FlightCase, law: FlightLaw, random: Random): FlightPoint {
  for (;;) {
    const point = drawnPoint(one, random);
    if (excessOf(law, { ...point, cas: point.ias }) < HOTTEST) return point;
  }
}

/** A setting within what the airplane may fly; in level flight speed goes with power. */
function drawnPoint(one: FlightCase, random: Random): FlightPoint {
  const flow = toSi(20 + 18 * random.uniform(), 'L/h');
  const tied = 30 + 38 * ((flow - toSi(20, 'L/h')) / toSi(18, 'L/h'));
  const free = 34 + 34 * random.uniform();
  const ias = one.level === undefined ? free : tied * (1 + one.level * (random.uniform() - 0.5));
  return { flow, ias, door: Math.exp(Math.log(0.12) + random.uniform() * Math.log(1 / 0.12)) };
}

// Below fully open a thermostat holds the temperature within its range; how is no matter here.
function regulated(one: FlightCase, wanted: number, air: number): number {
  if (!one.thermostat) return wanted;
  const [start, open] = one.thermostat;
  if (wanted >= open) return wanted;
  const share = Math.max(0, (wanted - air) / (open - air));
  return start + (open - start) * share ** 3;
}

function first(points: readonly FlightPoint[]): FlightPoint {
  const [one] = points;
  if (!one) throw new Error('a flight without points');
  return one;
}

function rounded(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function ar(random: Random, size: number, seconds: number): () => number {
  const keep = Math.exp(-1 / seconds);
  let x = size * random.normal();
  return () => {
    x = keep * x + size * Math.sqrt(1 - keep * keep) * random.normal();
    return x;
  };
}

const COLUMNS = [
  'coolant-temperature',
  'outside-air-temperature',
  'fuel-flow',
  'indicated-airspeed',
  'cowl-exit-position',
  'pressure-altitude',
] as const;

function recordingOfRows(rows: readonly number[][]): Recording {
  const channels = COLUMNS.map(
    (quantity, index): LogChannel => ({
      column: quantity,
      index,
      name: quantity,
      quantity,
      unit: null,
      confidence: 1,
      why: 'simulated',
      values: Float64Array.from(rows, (row) => row[index] ?? Number.NaN),
      valid: 1,
      flags: [],
    }),
  );
  const seconds = Float64Array.from(rows, (_, i) => i);
  const time = {
    seconds,
    startUtcMs: null,
    start: null,
    zone: 'unknown',
    durationSeconds: rows.length - 1,
    sampleRateHz: 1,
    segments: [],
  };
  return recordingOf([{ file: 'flight.csv', sha256: '', rows: rows.length, time, channels, flags: [] }]);
}

function airplaneOf(one: FlightCase): Airplane {
  const accuracy = (u95: number, unit: string) => ({
    u95: one.exact ? 0 : u95,
    unit,
    basis: 'known of the simulation',
  });
  const kelvin = (K: number) => ({ value: K, unit: 'K' });
  const { thermostatStart: _, thermostatOpen: __, ...cooling } = plainAirplane.cooling;
  const [start, open] = one.thermostat ?? [];
  return airplaneSchema.parse({
    ...plainAirplane,
    cooling: {
      ...cooling,
      ...(start === undefined ? {} : { thermostatStart: kelvin(start) }),
      ...(open === undefined ? {} : { thermostatOpen: kelvin(open) }),
    },
    instruments: {
      units: plainAirplane.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'coolant-temperature': accuracy(1, 'dK'),
        'outside-air-temperature': accuracy(0.5, 'dK'),
        'indicated-airspeed': accuracy(0.25, 'm/s'),
        'cowl-exit-position': accuracy(1, '%'),
      },
    },
  });
}
