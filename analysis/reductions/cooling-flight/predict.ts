/** Prediction before test: what the same instruments should read at a condition inside what was flown. */
import { hotDayAir } from '../../models/index.ts';
import { combineUncertainty } from '../../numbers/index.ts';
import { flag, OutOfRange, parsedBy } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import type { PredictedQuantity, Prediction } from '../reduction.ts';
import { atCondition, settingAsked } from './at-condition.ts';
import { flightModelSchema } from './flight-model.ts';
import { flightConditions } from './input.ts';
import { channelWords } from './point.ts';

/** Less than this of a rise still to come is not worth a remark, K. */
const WORTH_SAYING = 0.5;

/**
 * Predict the temperatures of the next steady point.
 * @param result a flight cooling result
 * @param conditions power, airspeed, door, height and air
 * @returns prediction intervals, or a refusal outside what was flown with the distance
 * @throws InputProblem when the conditions do not fit their schema
 */
export function predictCoolingFlight(result: Result, conditions: unknown): Prediction {
  const given = parsedBy(flightConditions, conditions, 'bad-request');
  const read = flightModelSchema.safeParse(result.model?.coolingFlight);
  if (!read.success || read.data.channels.length === 0)
    return refused('this result carries no fit: see its remarks for what is missing');
  const model = read.data;
  const quantities: PredictedQuantity[] = [];
  const flags: Prediction['flags'] = [];
  try {
    const setting = settingAsked(given, model);
    const air = given['outside-air-temperature']?.si ?? hotDayAir('14cfr23', setting.height ?? 0);
    const said = given['outside-air-temperature']
      ? 'the air asked for'
      : 'the hot day of the rule, as no air was given';
    for (const channel of model.channels) {
      const at = atCondition(channel, model, { setting, air });
      const { u95 } = combineUncertainty(
        [at.next, at.thinner, ...at.sensors.map((one) => one.read)].filter(({ u }) => u > 0),
      );
      const base = {
        name: channel.quantity,
        unit: 'K',
        conditions: { 'outside-air-temperature': { value: air, unit: 'K' } },
      };
      if (channel.open !== null && at.temperature < channel.open) {
        const words = `${channelWords(channel.quantity)}: the fit falls to ${at.temperature.toFixed(0)} K, below fully open (${channel.open.toFixed(0)} K): the thermostat holds it between its start and there`;
        flags.push(flag('regulated', words));
        quantities.push({ ...base, value: null, low: null, high: null, why: 'the thermostat would regulate there' });
        continue;
      }
      if (channel.stillToCome >= WORTH_SAYING) {
        const words = `${channelWords(channel.quantity)}: the band is for a reading taken as the points were; held longer it may be ${channel.stillToCome.toFixed(1)} K higher`;
        flags.push(flag('slow-node', words));
      }
      quantities.push({
        ...base,
        value: at.temperature,
        low: at.temperature - u95,
        high: at.temperature + u95,
        why: `in ${said}; curve through the points with its doubt, and the scatter of one more point`,
      });
    }
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(error.message);
  }
  return { kind: 'cooling-flight', status: 'predicted', quantities, tables: [], flags };
}

function refused(reason: string): Prediction {
  return { kind: 'cooling-flight', status: 'refused', reason, quantities: [], tables: [], flags: [] };
}
