/** Coverage of cooling climbs over simulated flights whose truth is known: the peak as it was, and as it is on the hot day. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result, ResultQuantity } from '../../analysis/results/index.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { type ClimbDay, PLAIN_CLIMB, simulateClimb } from './cooling-climb-flight.ts';
import { airplaneWith } from './cooling-days.ts';
import { CoverageCount, type CoverageRow } from './coverage-row.ts';

export interface TrialClimb {
  name: string;
  day: ClimbDay;
  airplane: (limit: number) => Airplane;
  wanted: readonly [number, number];
}

const C = (degrees: number) => toSi(degrees, 'degC');
/** A limit far from any peak, where none is asked about. */
const FAR = C(260);

// The instruments are as good as the simulation draws their errors; the recovery of the air probe is not known.
function ouzel(limit: number, day: ClimbDay): Airplane {
  return airplaneWith('ouzel', (json) => {
    const stated = (si: number) => ({ value: fromSi(si, 'degC'), unit: 'degC', source: 'drawn from this' });
    const accuracy = {
      'coolant-temperature': { u95: day.sensorU95, unit: 'dK', basis: 'drawn from this' },
      'outside-air-temperature': { u95: day.airU95, unit: 'dK', basis: 'drawn from this' },
      'pressure-altitude': { u95: day.heightU95, unit: 'm', basis: 'drawn from this' },
    };
    Object.assign(json.instruments ?? {}, { accuracy, airTemperatureIsStatic: false });
    delete json.instruments?.probeRecovery;
    delete json.plan?.coolingMargin;
    delete json.cooling?.thermostatStart;
    delete json.cooling?.thermostatOpen;
    if (day.thermostat) {
      Object.assign(json.cooling ?? {}, {
        thermostatStart: stated(day.thermostat.start),
        thermostatOpen: stated(day.thermostat.open),
      });
    }
    Object.assign(json.limits ?? {}, { coolant: { caution: stated(limit - 8), limit: stated(limit) } });
  });
}

function wrenlet(limit: number, day: ClimbDay): Airplane {
  return airplaneWith('wrenlet', (json) => {
    const stated = (si: number) => ({ value: fromSi(si, 'degC'), unit: 'degC', source: 'drawn from this' });
    const accuracy = {
      'cylinder-head-temperature': { u95: day.sensorU95, unit: 'dK', basis: 'drawn from this' },
      'outside-air-temperature': { u95: day.airU95, unit: 'dK', basis: 'drawn from this' },
      'pressure-altitude': { u95: day.heightU95, unit: 'm', basis: 'drawn from this' },
    };
    Object.assign(json.instruments ?? {}, { accuracy, airTemperatureIsStatic: false });
    delete json.instruments?.probeRecovery;
    delete json.plan?.coolingMargin;
    Object.assign(json.limits ?? {}, { cylinderHead: { caution: stated(limit - 20), limit: stated(limit) } });
  });
}

function trial(name: string, change: Partial<ClimbDay>, more: Partial<TrialClimb> = {}): TrialClimb {
  const day = { ...PLAIN_CLIMB, ...change };
  return { name, day, airplane: (limit) => ouzel(limit, day), wanted: [0.93, 0.995], ...more };
}

const HEADS: Partial<ClimbDay> = {
  part: 'cylinder-head-temperature#1',
  thermostat: null,
  excess: 160,
  tau: 110,
  sensorU95: 5,
  airU95: 2,
  step: 1,
  gust: 0.02,
};

/** Days the model can represent. */
export const HONEST_CLIMBS: readonly TrialClimb[] = [
  trial('plain, 1 Hz, 0.5 K steps', {}),
  trial('1 K steps', { step: 1 }),
  trial('2 Hz, 0.1 K steps, noisy', { rateHz: 2, step: 0.1, white: 0.5 }),
  trial('manifold pressure logged', { without: [] }),
  trial('one row in 2 s', { rateHz: 0.5 }),
  trial('air that lapses 3 K less than the hot day', { lapse: 3 }),
  trial('gusts of 4 % over 15 s', { gust: 0.04, gustSeconds: 15, wander: 2 }),
  trial('slow sensor, 15 s', { lag: 15 }),
  trial('thermostat that opens in the climb', { before: 0.5, thermostat: { start: C(80), open: C(92) }, excess: 98 }),
  (() => {
    const day = { ...PLAIN_CLIMB, ...HEADS };
    return trial('air-cooled heads', HEADS, { airplane: (limit) => wrenlet(limit, day) });
  })(),
];

/** Rougher than the assumed climb-to-climb scatter allows for: a stated limit, one climb cannot tell. */
export const ROUGH_CLIMB = trial(
  'very rough air',
  { gust: 0.06, gustSeconds: 20, wander: 3, structure: 0.6 },
  { wanted: [0.85, 1] },
);

const FAR_AIRPLANES = new Map<TrialClimb, Airplane>();

function farFrom(one: TrialClimb): Airplane {
  const known = FAR_AIRPLANES.get(one) ?? one.airplane(FAR);
  FAR_AIRPLANES.set(one, known);
  return known;
}

export interface TriedClimb {
  result: Result;
  truth: ReturnType<typeof simulateClimb>['truth'];
}

/** Reduce one simulated flight against a limit: far away, or where the truth lies on the hot day. */
export function tryClimb(one: TrialClimb, seed: number, limit?: 'at the truth'): TriedClimb {
  const reduction = reductionOf('cooling-climb');
  if (!reduction) throw new Error('no cooling climb');
  const { recording, truth } = simulateClimb(one.day, `${one.name} ${seed}`);
  const airplane = limit ? one.airplane(truth.hotPeak) : farFrom(one);
  return { result: reduction.reduce({ recording, airplane }), truth };
}

export function quantityNamed(result: Result, name: string): ResultQuantity | undefined {
  return result.quantities.find((one) => one.name === name);
}

export interface ClimbCoverage {
  rows: CoverageRow[];
  /** climbs whose temperature had not peaked or was regulated: nothing is given */
  withheld: number;
}

export function coverageOfClimb(one: TrialClimb, count: number): ClimbCoverage {
  const peak = new CoverageCount(`climb peak as read, ${one.name}`, 'K');
  const corrected = new CoverageCount(`peak on the hot day, ${one.name}`, 'K');
  const margin = new CoverageCount(`least margin, ${one.name}`, 'K');
  let [refused, withheld] = [0, 0];
  for (let seed = 0; seed < count; seed += 1) {
    const { result, truth } = tryClimb(one, seed);
    if (result.status === 'refused') refused += 1;
    const read = quantityNamed(result, 'peak-temperature');
    if (read?.value != null && read.u95 !== null) peak.add(read.value, truth.peak, read.u95);
    const hot = quantityNamed(result, 'corrected-peak-temperature');
    if (hot?.interval) addInterval(corrected, hot.interval, truth.hotPeak);
    else withheld += 1;
    const least = quantityNamed(result, 'least-hot-day-margin');
    if (least?.interval) addInterval(margin, least.interval, FAR - truth.hotPeak);
  }
  return {
    rows: [peak, corrected, margin].map((counted) => counted.row(count, refused, one.wanted)),
    withheld,
  };
}

// An interval with a one-sided part counts by its own ends.
function addInterval(counted: CoverageCount, [low, high]: [number | null, number | null], truth: number): void {
  if (low !== null && high !== null) counted.add((low + high) / 2, truth, (high - low) / 2);
}

/** How often a peak that on the hot day lies exactly at its limit is called shown. */
export function falseShownClimbs(count: number, trials: readonly TrialClimb[] = HONEST_CLIMBS.slice(0, 1)) {
  let [shown, of] = [0, 0];
  for (const one of trials) {
    for (let seed = 0; seed < count; seed += 1) {
      for (const { what, value, outcome } of tryClimb(one, seed, 'at the truth').result.comparisons) {
        if (!what.includes('peak on the hot day against the limit') || value === null) continue;
        of += 1;
        if (outcome === 'shown') shown += 1;
      }
    }
  }
  return { shown, of };
}

/** Climbs that give no margin: nothing peaked, or something regulated. */
export const SILENT_CLIMBS: readonly TrialClimb[] = [
  trial('regulated throughout', { excess: 60, thermostat: { start: C(85), open: C(98) } }),
  trial('levels off before it peaks', { to: 1000, tau: 420, before: 0.5, thermostat: null }),
];

export function valuesOnSilentClimbs(count: number): { name: string; values: number; flights: number }[] {
  return SILENT_CLIMBS.map((one) => {
    let values = 0;
    for (let seed = 0; seed < count; seed += 1) {
      const { result } = tryClimb(one, seed);
      if (quantityNamed(result, 'least-hot-day-margin')?.value != null) values += 1;
    }
    return { name: one.name, values, flights: count };
  });
}

/** Everything at length, for `npm run bench:coverage`. */
export function coverageCoolingClimb(count = 500) {
  return {
    climbs: [...HONEST_CLIMBS, ROUGH_CLIMB].map((one) => coverageOfClimb(one, count)),
    silent: valuesOnSilentClimbs(Math.ceil(count / 5)),
    boundary: falseShownClimbs(count, HONEST_CLIMBS),
  };
}
