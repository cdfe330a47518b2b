/** Coverage of the climb reduction over simulated flights: climbs found in the log by itself, truth known. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { seededRandom } from '../../analysis/numbers/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result, ResultQuantity } from '../../analysis/results/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { bestOf, ceilingOf } from './climb-airplane.ts';
import { type ClimbPlan, type FlownClimbs, flyClimbs } from './climb-flight.ts';
import { CoverageCount, type CoverageRow } from './coverage-row.ts';

const KNOT = toSi(1, 'kt');
const FOOT = toSi(1, 'ft');
const SERVICE = toSi(100, 'ft/min');

const plain = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'sample-tests', 'ouzel', 'airplane.json'), 'utf8'),
);

/** A plan drawn for one flight: smooth air to rough, shear, fine recorders and coarse. */
export function drawnClimbs(seed: number): ClimbPlan {
  const random = seededRandom(`climb plan ${seed}`);
  const coarse = random.uniform() < 0.5;
  return {
    propeller: random.uniform() < 0.5 ? 'fixed' : 'constant-speed',
    speeds: [0.58, 0.7, 0.84, 1, 1.16, 1.34],
    bands: [1000 + 400 * random.uniform()],
    pairs: true,
    seconds: 90 + random.whole(61),
    gust: 0.1 + 0.5 * random.uniform(),
    gustUp: 0.08 + 0.25 * random.uniform(),
    lift: 0.03 + 0.09 * random.uniform(),
    shear: 0.006 * random.uniform(),
    steps: coarse ? { airspeed: 1, height: 10, air: 1 } : { airspeed: 0.1, height: 1, air: 0.1 },
    stated: { airspeed: 0.25, gain: 0.005, air: 0.5, mass: 5 },
    rateHz: coarse ? 1 : 2,
  };
}

/** The airplane as its builder would describe it, its instruments as good as their errors were drawn from. */
export function described(flown: FlownClimbs, stated: ClimbPlan['stated']): Airplane {
  const { airplane } = flown;
  const accuracy = (u95: number, unit: string) => ({ u95, unit, basis: 'drawn from this' });
  return airplaneSchema.parse({
    ...plain,
    propeller: { ...plain.propeller, kind: airplane.propeller },
    wing: { area: { value: airplane.S, unit: 'm2' }, span: { value: airplane.span, unit: 'm' } },
    limits: {
      ...plain.limits,
      mass: { ...plain.limits.mass, maximum: { ...plain.limits.mass.maximum, value: airplane.standardMass } },
    },
    instruments: {
      units: plain.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'indicated-airspeed': accuracy(stated.airspeed, 'm/s'),
        'pressure-altitude': accuracy(100 * stated.gain, '%'),
        'outside-air-temperature': accuracy(stated.air, 'dK'),
      },
    },
  });
}

export function reduceFlown(flown: FlownClimbs, plan: ClimbPlan): Result {
  const result = reductionOf('climb')?.reduce({
    recording: flown.recording,
    airplane: described(flown, plan.stated),
    options: {
      startMass: { value: flown.startMass, unit: 'kg' },
      massU95: { value: plan.stated.mass, unit: 'kg' },
      fuelDensity: { value: 720, unit: 'kg/m3' },
    },
  });
  if (!result) throw new Error('no climb reduction');
  return result;
}

/** Coverage of every figure of a sawtooth flight. */
export function coverageClimbLogs(
  flights: number,
  planOf: (seed: number) => ClimbPlan = drawnClimbs,
  what = 'sawtooth',
): CoverageRow[] {
  const counts = {
    observed: new CoverageCount(`${what}: observed rate of a climb`, 'm/s'),
    standard: new CoverageCount(`${what}: standard rate of a climb`, 'm/s'),
    Vy: new CoverageCount(`${what}: best-rate speed`, 'kt', KNOT),
    Vx: new CoverageCount(`${what}: best-angle speed`, 'kt', KNOT),
    rate: new CoverageCount(`${what}: best rate`, 'm/s'),
    absolute: new CoverageCount(`${what}: absolute ceiling`, 'ft', FOOT),
    service: new CoverageCount(`${what}: service ceiling`, 'ft', FOOT),
  };
  const refused = { climb: 0, Vy: 0, Vx: 0, absolute: 0, service: 0 };
  let [climbs, bands] = [0, 0];
  for (let seed = 0; seed < flights; seed += 1) {
    const plan = planOf(seed);
    const flown = flyClimbs(plan, `${what} ${seed}`);
    const result = reduceFlown(flown, plan);
    climbs += flown.climbs.length;
    refused.climb += flown.climbs.length - countClimbs(result, flown, counts.observed, counts.standard);
    const of = (name: string) => result.quantities.filter((one) => one.name === name);
    for (const best of of('best-rate-speed')) {
      const height = Number(conditionOf(best));
      const truth = bestOf(flown.airplane, height);
      bands += 1;
      refused.Vy += add(counts.Vy, best, truth.Vy);
      const beside = (name: string) => of(name).find((one) => conditionOf(one) === height);
      refused.Vx += add(counts.Vx, beside('best-angle-speed'), truth.Vx);
      add(counts.rate, beside('best-rate'), truth.rate);
    }
    if (plan.bands.length > 1) {
      refused.absolute += add(counts.absolute, of('absolute-ceiling')[0], ceilingOf(flown.airplane, 0));
      refused.service += add(counts.service, of('service-ceiling')[0], ceilingOf(flown.airplane, SERVICE));
    }
  }
  const wanted = [0.93, 0.97] as const;
  // Each climb has its part in the scatter that judges it, so it lies inside more often than a new one would.
  const ownScatter = [0.93, 0.99] as const;
  return [
    counts.observed.row(climbs, refused.climb, wanted),
    counts.standard.row(climbs, refused.climb, ownScatter),
    counts.Vy.row(bands, refused.Vy, wanted),
    counts.Vx.row(bands, refused.Vx, wanted),
    counts.rate.row(bands, refused.Vy, wanted),
    counts.absolute.row(flights, refused.absolute, wanted),
    counts.service.row(flights, refused.service, wanted),
  ].filter((row) => row.of > 0);
}

const conditionOf = (one: ResultQuantity) => {
  const height = one.conditions['density-altitude'];
  return typeof height === 'object' ? height.value : null;
};

// Climbs found, against those flown: by the middle of the one inside the other.
function countClimbs(result: Result, flown: FlownClimbs, observed: CoverageCount, standard: CoverageCount): number {
  const table = result.tables.find((one) => one.name === 'climbs');
  const at = (name: string) => table?.columns.findIndex((one) => one.name === name) ?? -1;
  let found = 0;
  for (const row of table?.rows ?? []) {
    const of = (name: string) => Number(row[at(name)]);
    const middle = (of('from-seconds') + of('to-seconds')) / 2;
    const truth = flown.climbs.find((one) => one.fromSeconds < middle && middle < one.toSeconds);
    if (!truth) continue;
    found += 1;
    observed.add(of('rate-observed'), truth.rate, of('u95'));
    standard.add(of('rate-standard'), truth.standard, of('rate-standard-u95'));
  }
  return found;
}

// Intervals are not symmetric: the half that faces the truth is the one that has to hold it. Returns 1 for a refusal.
export function add(count: CoverageCount, quantity: ResultQuantity | undefined, truth: number): 0 | 1 {
  const value = quantity?.value ?? null;
  if (!quantity || value === null) return 1;
  const [low, high] = quantity.interval ?? [null, null];
  const half = truth > value ? (high === null ? null : high - value) : low === null ? null : value - low;
  count.add(value, truth, half ?? quantity.u95 ?? Number.POSITIVE_INFINITY);
  return 0;
}
