/** Coverage of flight cooling over simulated flights whose law is known: exponents, and readings at settings nobody flew. */
import process from 'node:process';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import { type FlightCase, type FlightPoint, type SimulatedFlight, simulateFlight } from './cooling-flight-log.ts';
import { CoverageCount, type CoverageRow, coverageLines } from './coverage-row.ts';

const WANTED = [0.93, 0.97] as const;

export const FLIGHT_CASES: readonly (FlightCase & { wanted: readonly [number, number] })[] = [
  { what: '16 points, 1.0 K between points', points: 16, scatter: 1, wanted: WANTED },
  { what: '16 points, 2.0 K between points', points: 16, scatter: 2, wanted: WANTED },
  { what: '10 points, 1.5 K between points', points: 10, scatter: 1.5, wanted: WANTED },
  // steadier than the usual: while there are few points the interval is wider than need be
  { what: '10 points, 0.5 K between points', points: 10, scatter: 0.5, wanted: [0.93, 1] },
  { what: '16 points, speed follows power within 25 %', points: 16, scatter: 1.5, level: 0.25, wanted: WANTED },
  { what: '24 points, thermostat at some of them', points: 24, scatter: 1, thermostat: [345, 357], wanted: WANTED },
  // a law that logarithms do not hold: the bend shows as scatter
  { what: '16 points, the door bends', points: 16, scatter: 1, law: { bend: -0.03 }, wanted: [0.88, 0.99] },
];

/** Flights before this one were looked at while the method was made; they are no evidence. */
const FIRST_SEED = 1000;
/** Predictions tried in each flight. */
const ASKED = 3;

interface Trial {
  result: Result;
  flight: SimulatedFlight;
}

/** Reduce one flight with the thermostat it has. */
export function tryFlight(one: FlightCase, seed: number): Trial {
  const cooling = reductionOf('cooling-flight');
  if (!cooling) throw new Error('no flight cooling');
  const flight = simulateFlight(one, seed);
  const options = one.thermostat ? {} : { thermostat: 'none' };
  return { flight, result: cooling.reduce({ recording: flight.recording, airplane: flight.airplane, options }) };
}

export function coverageCoolingFlight(
  count: number,
  cases: readonly (FlightCase & { wanted: readonly [number, number] })[] = FLIGHT_CASES,
): CoverageRow[] {
  const rows: CoverageRow[] = [];
  for (const one of cases) {
    const readings = new CoverageCount(`flight cooling, next reading, ${one.what}`, 'K');
    const exponents = new CoverageCount(`flight cooling, exponents, ${one.what}`, '1');
    let refused = 0;
    for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed += 1) {
      const trial = tryFlight(one, seed);
      if (!trial.result.tables.some((table) => table.name === 'coefficients')) refused += 1;
      else {
        countExponents(trial, exponents);
        countReadings(trial, one, readings);
      }
    }
    rows.push(readings.row(count, refused, one.wanted));
    if (!one.law?.bend) rows.push(exponents.row(count, refused, one.wanted));
  }
  process.stdout.write(`${coverageLines(rows).join('\n')}\n`);
  return rows;
}

function countExponents({ result, flight: { law } }: Trial, counted: CoverageCount): void {
  const truth: Record<string, number> = {
    'fuel-flow-exponent': law.flow,
    'dynamic-pressure-exponent': law.pressure,
    'cowl-exit-position-exponent': law.door,
  };
  // a term that went with another is not the law's own exponent
  const all = result.quantities.filter((quantity) => quantity.name in truth);
  if (all.length < Object.keys(truth).length) return;
  for (const { name, value, u95 } of all) {
    if (value !== null && u95 !== null) counted.add(value, truth[name] ?? Number.NaN, u95);
  }
}

function countReadings({ result, flight }: Trial, one: FlightCase, counted: CoverageCount): void {
  const cooling = reductionOf('cooling-flight');
  for (let k = 0; k < ASKED; k += 1) {
    const point = between(flight);
    const air = flight.airRead;
    const answer = cooling?.predict?.(result, {
      'fuel-flow': { value: point.flow, unit: 'm3/s' },
      'indicated-airspeed': { value: point.ias, unit: 'm/s' },
      'cowl-exit-position': { value: point.door, unit: '1' },
      'outside-air-temperature': { value: air, unit: 'K' },
    });
    const [quantity] = answer?.quantities ?? [];
    if (!quantity || quantity.value === null || quantity.low === null || quantity.high === null) continue;
    // the probe's error is in what is asked: the true air is that of the flight
    const trueAir = air - (flight.airRead - TRUE_AIR);
    const next = flight.reads(point, trueAir) + one.scatter * flight.random.normal();
    counted.add(
      quantity.value,
      next,
      next > quantity.value ? quantity.high - quantity.value : quantity.value - quantity.low,
    );
  }
}

const TRUE_AIR = 295.15;

/** A setting in the middle of three that were flown. */
function between({ points, random }: SimulatedFlight): FlightPoint {
  const three = [0, 1, 2].map(() => points[random.whole(points.length)]).filter((one) => one !== undefined);
  const mean = (of: (point: FlightPoint) => number) =>
    Math.exp(three.reduce((sum, one) => sum + Math.log(of(one)) / three.length, 0));
  return { flow: mean((one) => one.flow), ias: mean((one) => one.ias), door: mean((one) => one.door) };
}
