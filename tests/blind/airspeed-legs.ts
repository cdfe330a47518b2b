/**
 * Coverage over legs whose scatter is stated: the cases in which the method's own experiments were run (in another
 * language, by a linearised model), repeated here with the product's code. Each says what was found there.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { airspeedCalibrationOf, calibrate } from '../../analysis/models/index.ts';
import { type Random, seededRandom } from '../../analysis/numbers/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { CoverageCount, type CoverageRow } from './coverage-row.ts';

const KNOT = toSi(1, 'kt');

export interface LegCase {
  what: string;
  speeds: number;
  legs: number;
  /** standard deviation of one leg, kt */
  scatter: number;
  /** drift of the wind, kt an hour, drawn between */
  drift?: readonly [number, number];
  /** wandering wind, correlation time 10 min, standard deviation of each component, kt */
  wander?: number;
  /** one leg off by this, kt */
  outlier?: number;
  /** wind jumps by this half-way, kt */
  jump?: number;
  /** airspeed read to the knot, track to the degree */
  coarse?: boolean;
  /** share wanted */
  wanted: readonly [number, number];
}

/** Wanted: 90 to 99.5 % unless the experiment itself found otherwise. */
export const LEG_CASES: readonly LegCase[] = [
  // found: above 99 %, U 2.6 kt; at 2.5 kt of scatter 92 %
  { what: 'one speed, 3 legs, scatter 0.8 kt', speeds: 1, legs: 3, scatter: 0.8, wanted: [0.95, 1] },
  { what: 'one speed, 3 legs, scatter 2.5 kt', speeds: 1, legs: 3, scatter: 2.5, wanted: [0.85, 0.97] },
  // found: 96 %, U 1.8 kt; at 2.5 kt 87 %: a stated limit
  { what: 'one speed, 4 legs, scatter 1.5 kt', speeds: 1, legs: 4, scatter: 1.5, wanted: [0.9, 0.995] },
  { what: 'one speed, 4 legs, scatter 2.5 kt', speeds: 1, legs: 4, scatter: 2.5, wanted: [0.82, 0.96] },
  // found: 94 to 99 %, U 0.5 to 1.5 kt as scatter goes 0.3 to 1.5 kt; 94 % at 2.5 kt
  { what: '6 speeds, 4 legs, scatter 0.3 kt', speeds: 6, legs: 4, scatter: 0.3, wanted: [0.9, 0.995] },
  { what: '6 speeds, 4 legs, scatter 0.8 kt', speeds: 6, legs: 4, scatter: 0.8, wanted: [0.9, 0.995] },
  { what: '6 speeds, 4 legs, scatter 1.5 kt', speeds: 6, legs: 4, scatter: 1.5, wanted: [0.9, 0.995] },
  { what: '6 speeds, 4 legs, scatter 2.5 kt', speeds: 6, legs: 4, scatter: 2.5, wanted: [0.9, 0.995] },
  // found: 98 %
  {
    what: '6 speeds, 4 legs, wind wandering 0.8 kt',
    speeds: 6,
    legs: 4,
    scatter: 0.3,
    wander: 0.8,
    wanted: [0.9, 0.995],
  },
  // found: drift terms 98 %, U 0.77 kt, where a constant wind gave 99 % with U 1.4 to 2.5 kt
  {
    what: '6 speeds, 4 legs, drift 4 to 8 kt/h',
    speeds: 6,
    legs: 4,
    scatter: 0.8,
    drift: [4, 8],
    wanted: [0.9, 0.995],
  },
  {
    what: '6 speeds, 4 legs, steps of 1 kt and 1°',
    speeds: 6,
    legs: 4,
    scatter: 0.8,
    coarse: true,
    wanted: [0.9, 0.995],
  },
  // flagged as standing apart and kept: the speed it belongs to is off by a quarter of it
  { what: '6 speeds, 4 legs, one leg 4 kt off', speeds: 6, legs: 4, scatter: 0.5, outlier: 4, wanted: [0.85, 1] },
  { what: '6 speeds, 4 legs, wind jumps 3 kt half-way', speeds: 6, legs: 4, scatter: 0.5, jump: 3, wanted: [0.9, 1] },
];

const plain = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'sample-tests', 'ouzel', 'airplane.json'), 'utf8'),
);

export function exactAirplane(): Airplane {
  const exact = (unit: string) => ({ u95: 0, unit, basis: 'exact' });
  return airplaneSchema.parse({
    ...plain,
    instruments: {
      units: plain.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'indicated-airspeed': exact('kt'),
        'pressure-altitude': exact('ft'),
        'outside-air-temperature': exact('dK'),
        'ground-speed': exact('kt'),
        'track-true': exact('deg'),
      },
    },
  });
}

const SLOW = toSi(65, 'kt');
const FAST = toSi(140, 'kt');
/** Sea level on the standard day: there true and calibrated airspeed are one, and nothing of the product makes the legs. */
const SEA_LEVEL = { height: 0, air: toSi(15, 'degC') };

/** Position error, m/s: a law that bends more at the slow end, so that a parabola of lift is not quite it. */
export function trueError(ias: number): number {
  const x = (ias - SLOW) / (FAST - SLOW);
  return KNOT * (3 - 6.5 * x + 2.5 * x * x - 1.2 * Math.exp(-8 * x));
}

export function drawnLegs(one: LegCase, random: Random) {
  const wind = { north: 15 * KNOT * random.normal() * 0.5, east: 15 * KNOT * random.normal() * 0.5 };
  const drift = one.drift ? (one.drift[0] + (one.drift[1] - one.drift[0]) * random.uniform()) * KNOT : 0;
  const driftTo = 2 * Math.PI * random.uniform();
  const wanderNow = [random.normal(), random.normal()];
  const count = one.speeds * one.legs;
  const odd = random.whole(count);
  return Array.from({ length: count }, (_, i) => {
    const speed = Math.floor(i / one.legs);
    const aimed = one.speeds === 1 ? toSi(95, 'kt') : SLOW + ((FAST - SLOW) * speed) / (one.speeds - 1);
    const ias = aimed + 0.5 * KNOT * random.normal();
    const minutes = 2.5 * i;
    const heading = (2 * Math.PI * (i % one.legs)) / one.legs + speed + 0.05 * random.normal();
    const r = Math.exp(-2.5 / 10);
    wanderNow.forEach((w, k) => {
      wanderNow[k] = r * w + Math.sqrt(1 - r * r) * random.normal();
    });
    const jump = one.jump && i >= count / 2 ? one.jump * KNOT : 0;
    const over = (one.wander ?? 0) * KNOT;
    const here = {
      north: wind.north + (drift * minutes * Math.cos(driftTo)) / 60 + over * (wanderNow[0] ?? 0) + jump,
      east: wind.east + (drift * minutes * Math.sin(driftTo)) / 60 + over * (wanderNow[1] ?? 0),
    };
    const off = one.scatter * KNOT * random.normal() + (i === odd ? (one.outlier ?? 0) * KNOT : 0);
    const tas = ias + trueError(ias) + off;
    const north = tas * Math.cos(heading) + here.north;
    const east = tas * Math.sin(heading) + here.east;
    const step = (value: number, unit: string) =>
      one.coarse ? Math.round(value / toSi(1, unit)) * toSi(1, unit) : value;
    return {
      'indicated-airspeed': { value: step(ias, 'kt'), unit: 'm/s' },
      'pressure-altitude': { value: SEA_LEVEL.height, unit: 'm' },
      'outside-air-temperature': { value: SEA_LEVEL.air, unit: 'K' },
      'ground-speed': { value: step(Math.hypot(north, east), 'kt'), unit: 'm/s' },
      'track-true': { value: step(Math.atan2(east, north), 'deg'), unit: 'rad' },
      clock: { value: minutes, unit: 'min' },
    };
  });
}

/**
 * Coverage of each case.
 * @param flights how many of each
 * @param cases which
 */
export function coverageAirspeedLegs(flights: number, cases: readonly LegCase[] = LEG_CASES): CoverageRow[] {
  const airplane = exactAirplane();
  return cases.flatMap((one) => {
    const error = new CoverageCount(`legs: ${one.what}`, 'kt', KNOT);
    const curve = new CoverageCount(`curve: ${one.what}`, 'kt', KNOT);
    let refused = 0;
    for (let k = 0; k < flights; k += 1) {
      const points = drawnLegs(one, seededRandom(`${one.what} ${k}`));
      const result = reductionOf('airspeed')?.reduce({
        points: { kind: 'airspeed', points: sensed(points) },
        airplane,
      });
      if (result?.status !== 'reduced') {
        refused += 1;
        continue;
      }
      for (const row of result.tables.find((table) => table.name === 'position-error')?.rows ?? [])
        error.add(Number(row[2]), trueError(Number(row[0])), Number(row[3]));
      const calibration = airspeedCalibrationOf(result.model);
      const [low, high] = calibration?.curves[0]?.flown ?? [0, 0];
      for (let i = 0; calibration && high > low && i <= 12; i += 1) {
        const ias = low + ((high - low) * i) / 12;
        const { cas, u95 } = calibrate(calibration, ias);
        curve.add(cas - ias, trueError(ias), u95);
      }
    }
    return [
      error.row(flights, refused, one.wanted),
      ...(one.speeds > 1 ? [curve.row(flights, refused, [0.88, 1] as const)] : []),
    ];
  });
}

/** The altimeter reads the static port that is in error: sensed pressure is the true one plus the port's error. */
export function sensed(points: ReturnType<typeof drawnLegs>): ReturnType<typeof drawnLegs> {
  const ram = (v: number) => 101325 * ((1 + (0.2 * v * v) / (1.4 * 287.05287 * 288.15)) ** 3.5 - 1);
  return points.map((point) => {
    const ias = point['indicated-airspeed'].value;
    const p = 101325 + ram(ias + trueError(ias)) - ram(ias);
    const height = (288.15 / 0.0065) * (1 - (p / 101325) ** ((0.0065 * 287.05287) / 9.80665));
    return { ...point, 'pressure-altitude': { value: height, unit: 'm' } };
  });
}
