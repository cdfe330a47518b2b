/** One load case asked of a result: mass and centre of gravity with the interval the empty airplane and the fuel leave. */
import * as z from 'zod';
import { balanceOf, gasolineDensity, type LoadItem, marginInEnvelope } from '../../models/index.ts';
import { OutOfRange, parsedBy } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import type { PredictedQuantity, Prediction } from '../reduction.ts';
import { weightConditions } from './input.ts';

const modelSchema = z.object({
  empty: z.object({ mass: z.number(), massU95: z.number(), arm: z.number(), armU95: z.number() }),
  envelope: z.array(z.object({ mass: z.number(), arm: z.number() })),
  stations: z.array(z.object({ name: z.string(), arm: z.number() })),
  fuelArm: z.number().nullable(),
});

/**
 * Mass and centre of gravity of a load case.
 * @param result an accepted weight-and-balance result, object
 * @param conditions fuel and what lies at each station, object
 * @returns mass in kg and arm in m with their interval, or a refusal
 * @throws InputProblem when the conditions do not fit their schema
 */
export function predictWeightBalance(result: Result, conditions: unknown): Prediction {
  const asked = parsedBy(weightConditions, conditions, 'bad-request');
  const model = modelSchema.safeParse(result.model);
  if (!model.success) return refused('this result has no empty airplane to build on');
  const { empty, envelope, stations, fuelArm } = model.data;
  const items: LoadItem[] = [{ name: 'empty airplane', ...empty }];
  const unplaced: string[] = [];
  for (const { station, mass, arm } of asked.items) {
    const at = arm?.si ?? stations.find((one) => one.name === station)?.arm;
    if (at === undefined) unplaced.push(station);
    else items.push({ name: station, mass: mass.si, arm: at });
  }
  if (unplaced.length > 0) return refused(`no arm is known for ${unplaced.join(', ')}`);
  if (asked.fuel && fuelArm === null) return refused('the arm of a tank is not in the description');
  if (asked.fuel && fuelArm !== null) {
    const density = gasolineDensity();
    items.push({
      name: 'fuel',
      mass: asked.fuel.si * density.value,
      arm: fuelArm,
      massU95: asked.fuel.si * density.u95,
    });
  }
  try {
    const balance = balanceOf(items);
    const inside = envelope.length >= 3 ? marginInEnvelope(envelope, balance).inside : null;
    const why =
      inside === null
        ? 'no envelope to compare with'
        : inside
          ? 'inside the envelope with its uncertainty'
          : 'not inside the envelope with its uncertainty';
    return {
      kind: 'weight-balance',
      status: 'predicted',
      quantities: [
        interval('mass', 'kg', balance.mass, balance.massU95, why),
        interval('arm', 'm', balance.arm, balance.armU95, why),
      ],
      tables: [],
      flags: [],
    };
  } catch (error) {
    if (error instanceof OutOfRange) return refused(`${error.message}`);
    throw error;
  }
}

function interval(name: string, unit: string, value: number, u95: number, why: string): PredictedQuantity {
  return { name, unit, value, low: value - u95, high: value + u95, conditions: {}, why };
}

function refused(reason: string): Prediction {
  return { kind: 'weight-balance', status: 'refused', reason, quantities: [], tables: [], flags: [] };
}
