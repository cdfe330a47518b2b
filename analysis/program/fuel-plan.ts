/** Fuel of a flight: what it burns, what must remain, and how long the tanks let it be. */
import type { Airplane } from '../airplane/index.ts';
import { gasolineDensity } from '../models/index.ts';
import { toSi } from '../units/index.ts';
import { BURN_SHARE, climbMinutes, USUAL_RESERVE } from './outing-rules.ts';

export interface FuelFigures {
  /** burn at take-off power, m3/s */
  takeoffFlow: number;
  /** what the engine can be fed from without a transfer, m3 */
  usable: number;
  /** what must remain at landing, m3 */
  reserve: number;
  /** how the burn and the reserve were come by */
  words: string;
}

/** 0.55 lb per hp-hour where the burn is not known */
const USUAL_BURN = toSi(0.55, 'lb') / toSi(1, 'hp') / toSi(1, 'h');

/**
 * What the description says about fuel.
 * @param airplane the description, object
 * @returns figures in SI; null where neither burn nor rated power is stated
 * @source 0.55 lb per hp-hour where the burn is not known: AC 90-89A ch. 1 sec. 10 [ac-90-89a]
 */
export function fuelFigures(airplane: Airplane): FuelFigures | null {
  const stated = airplane.engine.takeoffFuelFlow?.si;
  const power = airplane.engine.ratedPower?.si;
  if (stated === undefined && power === undefined) return null;
  const takeoffFlow = stated ?? ((power ?? 0) * USUAL_BURN) / gasolineDensity().value;
  const usable = airplane.fuel.tanks
    .filter((tank) => tank.transfersTo === undefined)
    .reduce((sum, tank) => sum + (tank.usable?.si ?? tank.capacity.si), 0);
  const time = airplane.fuel.reserve?.si ?? USUAL_RESERVE;
  const byTime = time * takeoffFlow * BURN_SHARE;
  const turnBack = airplane.plan.turnBackFuel?.si ?? 0;
  const burnWords = stated === undefined ? 'burn taken as 0.55 lb per hp-hour of rated power' : 'burn as stated';
  const reserveWords =
    turnBack >= byTime
      ? 'reserve is the fuel at which the flight ends'
      : airplane.fuel.reserve
        ? 'reserve by the time stated'
        : 'reserve of one hour, for want of a stated one';
  return { takeoffFlow, usable, reserve: Math.max(byTime, turnBack), words: `${burnWords}; ${reserveWords}` };
}

/**
 * Fuel burnt on a flight: take-off power in the climb, a share of it for the rest.
 * @param minutes whole flight, min
 * @param height greatest height, m above ground
 * @param figures fuel figures, SI
 * @returns m3
 * @source common practice [practice]
 */
export function burnOf(minutes: number, height: number, figures: FuelFigures): number {
  const climb = Math.min(minutes, climbMinutes(height));
  const rest = minutes - climb;
  return toSi(climb, 'min') * figures.takeoffFlow + toSi(rest, 'min') * figures.takeoffFlow * BURN_SHARE;
}

/**
 * The longest flight the tanks allow with the reserve kept, all of it in a climb to be on the careful side.
 * @param figures fuel figures, SI, or null
 * @param longest longest flight by other rules, min
 * @returns minutes
 * @source common practice [practice]
 */
export function longestByFuel(figures: FuelFigures | null, longest: number): number {
  if (figures === null) return longest;
  const seconds = Math.max(0, figures.usable - figures.reserve) / figures.takeoffFlow;
  return Math.min(longest, seconds / toSi(1, 'min'));
}
