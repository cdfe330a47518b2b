/** What the next ground run should read, from an accepted result: within what was measured, refused beyond it. */
import * as z from 'zod';
import { flag, parsedBy } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import { baseName, show } from '../../units/index.ts';
import type { PredictedQuantity, Prediction } from '../reduction.ts';
import { drawsFrom } from './draws.ts';
import { type HeldModel, heldModelSchema } from './held-model.ts';
import { type CoolingConditions, coolingConditions } from './input.ts';
import { expectedTable, longestRun } from './next-run.ts';
import { outlookOf, type Start } from './outlook.ts';
import { isSameExit, isSamePower } from './repeatability.ts';
import { AHEAD } from './rows.ts';

const modelSchema = z.object({
  conditions: z.array(heldModelSchema),
  limits: z.object({ caution: z.number().nullable(), limit: z.number().nullable() }),
  reference: z.object({ air: z.number() }),
});

/** Air colder than measured by more than this is another day altogether, K; warmer goes up to the hot day. */
const COLDER = 15;
/** A run may start this far outside the temperatures measured, K. */
const START_BEYOND = 10;

/**
 * Predict the next run of a condition.
 * @param result a reduced ground run, object
 * @param given engine speed, exit, fan, air, start and duration
 * @returns temperatures minute by minute with their prediction band, times to caution and limit, longest run; or a
 * refusal
 * @throws InputProblem when the conditions do not fit their schema
 */
export function predictCoolingGround(result: Result, given: unknown): Prediction {
  const conditions = parsedBy(coolingConditions, given, 'bad-request');
  const read = modelSchema.safeParse(result.model);
  if (result.status === 'refused' || !read.success) {
    return refused('there is no reduced ground run to predict from');
  }
  const { limits, reference, conditions: models } = read.data;
  const model = matching(models, conditions);
  if (typeof model === 'string') return refused(model);
  const air = conditions['outside-air-temperature']?.si ?? model.air;
  const start: Start = { temperature: conditions.start?.si ?? model.start, air: model.air === null ? 0 : (air ?? 0) };
  const outside = outsideShown(model, start, reference.air);
  if (outside !== null) return refused(outside);
  const length = model.toSeconds - model.fromSeconds;
  const horizon = AHEAD * length;
  const asked = conditions.duration?.si ?? horizon;
  const outlook = outlookOf(model, drawsFrom('cooling-ground'));
  const quantity = baseName(model.quantity);
  const why = `${model.label}, held ${Math.round(length / 60)} min in air of ${model.air === null ? 'unknown temperature' : show(model.air, 'degC', { decimals: 0 }).text}`;
  const quantities: PredictedQuantity[] = [];
  const add = (name: string, unit: string, value: number | null, low: number | null, high: number | null) =>
    quantities.push({ name, unit, value, low, high, conditions: asConditions(model, start), why });
  for (const name of ['caution', 'limit'] as const) {
    const bound = limits[name];
    if (bound === null) continue;
    const { early, median } = outlook.timeToLimit(start, bound);
    const known = (t: number) => (t <= horizon ? t : null);
    add(`time-to-${name}`, 's', model.resolved ? known(median) : null, known(early) ?? Math.min(early, horizon), null);
  }
  const longest = longestRun(outlook, start, limits);
  if (longest) add('longest-run', 's', longest.seconds, null, null);
  const far = asked > horizon;
  return {
    kind: 'cooling-ground',
    status: 'predicted',
    quantities,
    tables: [expectedTable(outlook, start, Math.min(asked, horizon), quantity)],
    flags: [
      ...(far
        ? [
            flag(
              'extrapolated',
              `nothing is said beyond ${Math.round(horizon / 60)} min: half as long again as the ${Math.round(length / 60)} min measured`,
            ),
          ]
        : []),
      ...(model.regimeKnown ? [] : [flag('regime-unknown', 'it is not known whether a thermostat was regulating')]),
      ...(model.allowance > 0
        ? [flag('slow-node', `the hot end holds up to ${model.allowance.toFixed(1)} K for what warms slowly`)]
        : []),
    ],
  };
}

function matching(models: readonly HeldModel[], conditions: CoolingConditions): HeldModel | string {
  const fan = conditions['cooling-fan-state'];
  const wanted = {
    engineSpeed: conditions['engine-speed'].si,
    exit: conditions['cowl-exit-position']?.si ?? null,
    fan: fan === undefined ? null : fan > 0.5,
  };
  const held = models.filter(
    (model) =>
      isSamePower(model, wanted) &&
      (wanted.exit === null || isSameExit(model, wanted)) &&
      (wanted.fan === null || model.fan === wanted.fan),
  );
  if (held.length === 0) {
    const known = [...new Set(models.map((model) => model.label))].join('; ');
    return `this condition was not held; measured are: ${known || 'none'}. Measure it first: fan, door and speed are not carried over`;
  }
  const kinds = new Set(held.map((model) => `${model.exit?.toFixed(2)} ${model.fan}`));
  if (kinds.size > 1) {
    return `several conditions fit: ${[...new Set(held.map((model) => model.label))].join('; ')}. Say where the exit stands and whether the fan runs`;
  }
  // of several runs the one that says most: resolved, then longest
  const [best] = held.toSorted(
    (a, b) => Number(b.resolved) - Number(a.resolved) || b.toSeconds - b.fromSeconds - (a.toSeconds - a.fromSeconds),
  );
  return best ?? 'this condition was not held';
}

function outsideShown(model: HeldModel, start: Start, hotAir: number): string | null {
  const words = (si: number) => show(si, 'degC', { decimals: 0 }).text;
  if (model.air !== null) {
    const most = Math.max(hotAir, model.air);
    if (start.air > most + 0.5) return `air of ${words(start.air)} is hotter than the hot day of ${words(most)}`;
    if (start.air < model.air - COLDER) {
      return `air of ${words(start.air)} is more than ${COLDER} K colder than the ${words(model.air)} it was measured in`;
    }
  }
  // on another day start and end move with the air
  const shift = model.air === null ? 0 : start.air - model.air;
  const low = Math.min(model.start, model.end) - START_BEYOND + Math.min(0, shift);
  const high = Math.max(model.start, model.end) + START_BEYOND + Math.max(0, shift);
  if (start.temperature < low || start.temperature > high) {
    return `a start at ${words(start.temperature)} is outside what was measured, ${words(low)} to ${words(high)}: below it the thermostat may not be open`;
  }
  return null;
}

function asConditions(model: HeldModel, start: Start): Record<string, unknown> {
  return {
    segment: model.label,
    'engine-speed': { value: model.engineSpeed, unit: '1/s' },
    ...(model.exit === null ? {} : { 'cowl-exit-position': { value: model.exit, unit: '1' } }),
    ...(model.fan === null ? {} : { 'cooling-fan-state': model.fan }),
    ...(model.air === null ? {} : { 'outside-air-temperature': { value: start.air, unit: 'K' } }),
    start: { value: start.temperature, unit: 'K' },
  };
}

function refused(reason: string): Prediction {
  return { kind: 'cooling-ground', status: 'refused', reason, quantities: [], tables: [], flags: [] };
}
