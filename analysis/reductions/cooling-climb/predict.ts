/** What the next cooling climb should peak at, in other air or from another field: refused away from what was flown. */
import * as z from 'zod';
import { L } from '../../air/index.ts';
import { combineUncertainty } from '../../numbers/index.ts';
import { flag, parsedBy } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import { fromSi, show, toSi } from '../../units/index.ts';
import type { PredictedQuantity, Prediction } from '../reduction.ts';
import { type PeakModel, peakModelSchema } from './climb-model.ts';
import { ruleDoubt, thinnerAir } from './corrected.ts';
import { coolingClimbConditions } from './input.ts';

const modelSchema = z.object({ peaks: z.array(peakModelSchema) });

/** The air may differ from the measured one by this, either way: the one-to-one rule is not asked for more, K. */
const AIR_BEYOND = 25;
/** The climb may start this much higher or lower, m: its air is then 6 % thinner or thicker. */
const HEIGHT_BEYOND = 600;
/** Closer than this the air is the same, K. */
const SAME_AIR = 1;
/** Another climb speed is another duct flow, m/s. */
const SPEED_BEYOND = toSi(5, 'kt');

/**
 * Predict the peaks of the next climb.
 * @param result a reduced cooling climb, object
 * @param given air, the height it is meant for, where the climb starts, its airspeed
 * @returns the reading each temperature should peak at, with its prediction interval; or a refusal
 * @throws InputProblem when the conditions do not fit their schema
 */
export function predictCoolingClimb(result: Result, given: unknown): Prediction {
  const conditions = parsedBy(coolingClimbConditions, given, 'bad-request');
  const read = modelSchema.safeParse(result.model);
  if (result.status === 'refused' || !read.success) return refused('there is no reduced cooling climb to predict from');
  const { peaks } = read.data;
  const [first] = peaks;
  if (!first) return refused('no temperature of the measured climbs peaked with nothing regulating it');
  const wanted = conditions['indicated-airspeed']?.si;
  const alike = peaks.filter(
    ({ airspeed }) => wanted === undefined || airspeed === null || Math.abs(airspeed - wanted) <= SPEED_BEYOND,
  );
  if (alike.length === 0) {
    const flown = [...new Set(peaks.map(({ airspeed }) => Math.round(fromSi(airspeed ?? 0, 'kt'))))].join(', ');
    return refused(`no climb was measured within 5 kt of this airspeed; measured: ${flown} kt. Fly it first`);
  }
  const air = conditions['outside-air-temperature'].si;
  const quantities: PredictedQuantity[] = [];
  const reasons: string[] = [];
  for (const model of hottestEach(alike)) {
    const from = conditions['start-pressure-altitude']?.si ?? model.fromHeight;
    const at = conditions['pressure-altitude']?.si ?? from;
    const higher = from - model.fromHeight;
    // the day's air at the height where the peak will come, by the standard lapse
    const there = air - L * (model.height + higher - at);
    const outside = outsideShown(model, there, higher);
    if (outside !== null) reasons.push(outside);
    else quantities.push(peakIn(model, there, higher, { air, at }));
  }
  if (quantities.length === 0) return refused(reasons[0] ?? 'outside what was flown');
  return {
    kind: 'cooling-climb',
    status: 'predicted',
    quantities,
    tables: [],
    flags: [
      flag('method-note', 'the reading follows the air one to one; air lapses by the standard 6.5 K per 1000 m'),
      ...[...new Set(reasons)].map((reason) => flag('extrapolated', reason)),
    ],
  };
}

// Of several climbs alike the hottest above its air: the next one may be it.
function hottestEach(models: readonly PeakModel[]): PeakModel[] {
  const chosen = new Map<string, PeakModel>();
  for (const model of models) {
    const known = chosen.get(model.quantity);
    if (!known || model.peak - model.factor * model.air > known.peak - known.factor * known.air)
      chosen.set(model.quantity, model);
  }
  return [...chosen.values()];
}

function outsideShown({ air, quantity }: PeakModel, there: number, higher: number): string | null {
  if (Math.abs(higher) > HEIGHT_BEYOND) {
    return `a climb from ${show(Math.abs(higher), 'ft', { decimals: 0 }).text} ${higher > 0 ? 'higher' : 'lower'} is outside what was flown: thinner air carries off less heat. Fly one from there`;
  }
  const apart = there - air;
  if (Math.abs(apart) <= AIR_BEYOND) return null;
  return `${quantity}: air ${show(Math.abs(apart), 'dK', { decimals: 0 }).text} ${apart > 0 ? 'hotter' : 'colder'} than measured is more than the ${AIR_BEYOND} K the one-to-one rule is trusted over`;
}

function peakIn(
  model: PeakModel,
  there: number,
  higher: number,
  asked: { air: number; at: number },
): PredictedQuantity {
  const apart = there - model.air;
  const value = model.peak + model.factor * apart;
  // a climb from 600 m higher is in air as much thinner as 23 K make it
  const taken = Math.abs(apart) + (AIR_BEYOND * Math.abs(higher)) / HEIGHT_BEYOND;
  const { u95 } = combineUncertainty([
    { part: 'noise', u: model.noiseU, nu: model.noiseNu },
    { part: 'repeatability', u: model.repeatU, nu: model.repeatNu },
    { part: 'calibration', u: model.factor * model.airU, nu: model.airNu },
    { part: 'fit', u: taken < SAME_AIR ? 0 : ruleDoubt(model.over), nu: Number.POSITIVE_INFINITY },
  ]);
  return {
    // not the reading's own name: on a card that would stand beside every row, and it is the highest alone
    name: `peak-${model.quantity}`,
    unit: 'K',
    value,
    low: value - u95,
    high: value + u95 + (model.powerFalls || taken < SAME_AIR ? 0 : thinnerAir(model.over, taken)),
    conditions: {
      climb: model.climb,
      'outside-air-temperature': { value: asked.air, unit: 'K' },
      'pressure-altitude': { value: asked.at, unit: 'm' },
      'air-at-the-peak': { value: there, unit: 'K' },
      'peak-pressure-altitude': { value: model.height + higher, unit: 'm' },
    },
    why: `peak of ${model.climb}, ${show(model.peak, 'degC', { decimals: 0 }).text} in air of ${show(model.air, 'degC', { decimals: 0 }).text}`,
  };
}

function refused(reason: string): Prediction {
  return { kind: 'cooling-climb', status: 'refused', reason, quantities: [], tables: [], flags: [] };
}
