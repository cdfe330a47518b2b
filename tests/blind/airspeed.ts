/** Coverage of the airspeed calibration over simulated flights whose truth is known. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { airspeedCalibrationOf, calibrate } from '../../analysis/models/index.ts';
import { seededRandom } from '../../analysis/numbers/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { type FlightPlan, type FlownFlight, flyCalibration } from './airspeed-flight.ts';
import { CoverageCount, type CoverageRow } from './coverage-row.ts';

const KNOT = toSi(1, 'kt');
const DEGREE = toSi(1, 'deg');

const plain = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'sample-tests', 'ouzel', 'airplane.json'), 'utf8'),
);

/** An airplane whose instruments are as good as the flight's errors were drawn from. */
function airplaneOf(stated: FlightPlan['stated']): Airplane {
  const accuracy = (u95: number, unit: string) => ({ u95, unit, basis: 'drawn from this' });
  return airplaneSchema.parse({
    ...plain,
    instruments: {
      units: plain.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'indicated-airspeed': accuracy(stated.airspeed, 'm/s'),
        'pressure-altitude': accuracy(stated.height, 'm'),
        'outside-air-temperature': accuracy(stated.air, 'dK'),
        'ground-speed': accuracy(stated.speed, 'm/s'),
      },
    },
  });
}

/** A plan drawn for one flight: smooth air to rough, a drifting wind, recorders fine and coarse. */
export function drawnPlan(seed: number): FlightPlan {
  const random = seededRandom(`plan ${seed}`);
  const coarse = random.uniform() < 0.5;
  return {
    speeds: 5 + random.whole(2),
    legs: 3 + random.whole(2),
    legSeconds: 60 + random.whole(31),
    // legs then differ by 0.2 to 1.5 kt, as on flights of this kind
    gust: 0.2 + 1.1 * random.uniform(),
    wander: 0.1 + 0.2 * random.uniform(),
    drift: 4 * KNOT * random.uniform() * 2,
    steps: coarse
      ? { airspeed: 1, height: 10, air: 1, speed: 1, track: 1 }
      : { airspeed: 0.1, height: 1, air: 0.1, speed: 0.1, track: 0.1 },
    stated: { airspeed: 0.25, height: 12, air: 0.5, speed: 0.1 },
    rateHz: coarse ? 1 : 2,
    turns: 0,
  };
}

/** The same air and recorders, two full turns at each speed. */
export function drawnTurns(seed: number): FlightPlan {
  return { ...drawnPlan(seed), turns: 2, rateHz: 2 };
}

export function reduceFlight(flight: FlownFlight): Result {
  const airspeed = reductionOf('airspeed');
  if (!airspeed) throw new Error('no airspeed reduction');
  return airspeed.reduce({
    recording: flight.recording,
    airplane: airplaneOf(flight.stated),
    options: { dewPoint: { value: flight.dewPoint, unit: 'K' } },
  });
}

/**
 * Fly and reduce, and count how often the truth lay inside.
 * @param flights how many
 * @param planOf plan of a flight by its number
 */
export function coverageAirspeed(
  flights: number,
  planOf: (seed: number) => FlightPlan = drawnPlan,
  name = 'airspeed',
): CoverageRow[] {
  const counts = {
    error: new CoverageCount(`${name}: position error`, 'kt', KNOT),
    cas: new CoverageCount(`${name}: calibrated airspeed`, 'kt', KNOT),
    curve: new CoverageCount(`${name}: curve`, 'kt', KNOT),
    wind: new CoverageCount(`${name}: wind speed`, 'kt', KNOT),
    from: new CoverageCount(`${name}: wind direction`, '°', DEGREE),
  };
  let refused = 0;
  for (let seed = 0; seed < flights; seed += 1) {
    const flight = flyCalibration(planOf(seed), `${name} ${seed}`);
    const result = reduceFlight(flight);
    if (result.status === 'refused') {
      refused += 1;
      continue;
    }
    countFlight(result, flight, counts);
  }
  const wanted = [0.93, 0.97] as const;
  return [
    counts.error.row(flights, refused, wanted),
    counts.cas.row(flights, refused, wanted),
    counts.curve.row(flights, refused, [0.9, 0.995]),
    counts.wind.row(flights, refused, [0.9, 0.995]),
    counts.from.row(flights, refused, [0.9, 0.995]),
  ];
}

/** Coverage where turns were flown instead of legs. */
export function coverageAirspeedTurns(flights: number): CoverageRow[] {
  return coverageAirspeed(flights, drawnTurns, 'airspeed in turns');
}

function countFlight(
  result: Result,
  flight: FlownFlight,
  counts: Record<'error' | 'cas' | 'curve' | 'wind' | 'from', CoverageCount>,
): void {
  for (const row of result.tables.find((one) => one.name === 'position-error')?.rows ?? []) {
    const [ias = 0, cas = 0, correction = 0, u95 = 0] = row.map(Number);
    counts.error.add(correction, flight.positionErrorAt(ias), u95);
    counts.cas.add(cas, flight.casAt(ias), Number(row[6]));
  }
  const calibration = airspeedCalibrationOf(result.model);
  const [low, high] = calibration?.curves[0]?.flown ?? [0, -1];
  for (let k = 0; calibration && k <= 8; k += 1) {
    const ias = low + ((high - low) * k) / 8;
    const { cas, u95 } = calibrate(calibration, ias);
    counts.curve.add(cas, flight.casAt(ias), u95);
  }
  const speed = result.quantities.find((one) => one.name === 'wind-speed');
  const direction = result.quantities.find((one) => one.name === 'wind-direction');
  const truth = Math.hypot(flight.wind.north, flight.wind.east);
  if (speed?.value && speed.u95) counts.wind.add(speed.value, truth, speed.u95);
  if (direction?.value && direction.u95) {
    const from = Math.atan2(-flight.wind.east, -flight.wind.north);
    const turned = Math.atan2(Math.sin(direction.value - from), Math.cos(direction.value - from));
    counts.from.add(turned, 0, direction.u95);
  }
}
