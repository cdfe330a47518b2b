/** From the boxes of a card to the points of a reduction: written figures reduce by the same functions as logs. */
import type { Airplane } from '../../airplane/index.ts';
import type { Card } from '../card.ts';
import type { BoxReading } from '../flown-card.ts';
import { airspeedPoints } from './airspeed-points.ts';
import type { CardPoints, PointsMaker } from './card-points.ts';
import { cardReader } from './card-reader.ts';
import { climbPoints } from './climb-points.ts';
import { coolingClimbPoints, coolingFlightPoints } from './cooling-flight-points.ts';
import { coolingGroundPoints } from './cooling-ground-points.ts';
import { weighingPoints } from './weighing-points.ts';

const MAKERS: Readonly<Record<string, PointsMaker>> = {
  airspeed: airspeedPoints,
  climb: climbPoints,
  'cooling-climb': coolingClimbPoints,
  'cooling-flight': coolingFlightPoints,
  'cooling-ground': coolingGroundPoints,
  'weight-balance': weighingPoints,
};

/**
 * The points a card gives to a reduction.
 * @param card as printed, object
 * @param readings what was written, by box, list
 * @param kind name of the reduction, text
 * @param airplane the description, object
 * @param startMass mass with the fuel of the first figure of fuel aboard, kg, or null where nobody stated it
 * @returns sets of points, each to be reduced by itself; none where the card's boxes are not what the reduction takes
 */
export function pointsOfCard(
  card: Card,
  readings: readonly BoxReading[],
  kind: string,
  airplane: Airplane,
  startMass: number | null = null,
): CardPoints[] {
  const maker = MAKERS[kind];
  if (!maker) return [];
  const reader = cardReader(card, readings);
  const arms = new Set(airplane.fuel.tanks.map((tank) => tank.arm?.si ?? null));
  const [arm] = arms;
  const sets = maker(reader, {
    startMass,
    flaps: airplane.flaps === false ? [] : airplane.flaps.settings,
    fuelArm: arms.size === 1 ? (arm ?? null) : null,
  });
  return sets.map((set) => ({ ...set, remarks: [...set.remarks, ...reader.unread] }));
}

/** Kinds of reduction whose points can be written on a card. */
export const KINDS_FROM_CARDS: readonly string[] = Object.keys(MAKERS);
