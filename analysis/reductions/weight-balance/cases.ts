/** Load cases: what is aboard, where it puts the centre of gravity, and how far that is from each limit. */
import type { Airplane } from '../../airplane/index.ts';
import {
  type Balance,
  balanceOf,
  ballastFor,
  type Corner,
  type EnvelopeMargin,
  type LoadItem,
  marginInEnvelope,
  roundedUp,
} from '../../models/index.ts';
import { OutOfRange } from '../../remarks/index.ts';
import { densityOf, type Empty } from './empty.ts';
import type { LoadPoint, WantedPoint, WeightOptions, WeightPoint } from './input.ts';

export interface LoadCase {
  name: string;
  items: LoadItem[];
  balance: Balance;
  margin: EnvelopeMargin | null;
  /** what could not be placed, in words */
  unknown: string[];
}

export interface WantedBallast {
  name: string;
  station: string;
  wanted: number;
  /** kg after rounding up; null with the reason where the place cannot do it */
  ballast: number | null;
  reason: string;
  balance: Balance | null;
  margin: EnvelopeMargin | null;
}

/**
 * The load cases of the card, or two of the description where the card has none.
 * @param empty the empty airplane, object
 * @param points points of the card, list
 * @param airplane the description, object
 * @param options what was stated, object
 * @returns cases with their balance and margins
 */
export function loadCases(
  empty: Empty,
  points: readonly WeightPoint[],
  airplane: Airplane | undefined,
  options: WeightOptions,
): LoadCase[] {
  const loads = points.filter((point): point is LoadPoint => point.role === 'load');
  const names = [...new Set(loads.map((one) => one.case))];
  const written = names.map((name) => {
    const mine = loads.filter((one) => one.case === name);
    const placed = mine.map((one) => placeItem(one, airplane, options));
    return {
      name,
      items: placed.flatMap((one) => one.item ?? []),
      unknown: placed.flatMap((one) => one.unknown ?? []),
    };
  });
  const cases = written.length > 0 ? written : usualCases(airplane, options);
  const corners = cornersOf(airplane);
  return cases.map(({ name, items, unknown }) => {
    const balance = balanceOf([emptyItem(empty), ...items]);
    return { name, items, unknown, balance, margin: corners.length >= 3 ? marginInEnvelope(corners, balance) : null };
  });
}

/**
 * Ballast that brings a case to a wanted centre of gravity, rounded up to what is on hand and worked out again.
 * @param point what is wanted, object
 * @param cases load cases, list
 * @param airplane the description, object
 * @param step smallest bag or plate, kg, above 0
 * @returns ballast with the mass and arm it gives, or the reason why not
 */
export function ballastWanted(
  point: WantedPoint,
  cases: readonly LoadCase[],
  airplane: Airplane | undefined,
  step: number,
): WantedBallast {
  const base = { name: point.case, station: point.station, wanted: point.arm.si };
  const nothing = (reason: string): WantedBallast => ({ ...base, ballast: null, reason, balance: null, margin: null });
  const found = cases.find((one) => one.name === point.case);
  const station = airplane?.loading.stations.find((one) => one.name === point.station);
  if (!found) return nothing(`no load case is called ${point.case}`);
  if (!station) return nothing(`no station is called ${point.station}`);
  const arms = [...(airplane?.loading.stations ?? []).map((one) => one.arm.si), found.balance.arm];
  const range = Math.max(...arms) - Math.min(...arms);
  try {
    const exact = ballastFor(found.balance.mass, found.balance.arm, point.arm.si, station.arm.si, range);
    const ballast = roundedUp(exact, step);
    const balance = balanceOf([
      {
        name: found.name,
        mass: found.balance.mass,
        arm: found.balance.arm,
        massU95: found.balance.massU95,
        armU95: found.balance.armU95,
      },
      { name: station.name, mass: ballast, arm: station.arm.si },
    ]);
    const corners = cornersOf(airplane);
    const margin = corners.length >= 3 ? marginInEnvelope(corners, balance) : null;
    return { ...base, ballast, reason: reasonOf(ballast, station.maximum?.si ?? null, margin), balance, margin };
  } catch (error) {
    if (error instanceof OutOfRange)
      return nothing(`${error.quantity} ${error.value.toPrecision(3)} is outside: ${error.range}`);
    throw error;
  }
}

/** Corners of the envelope, SI. */
export function cornersOf(airplane: Airplane | undefined): Corner[] {
  return (airplane?.loading.envelope ?? []).map((corner) => ({ mass: corner.mass.si, arm: corner.arm.si }));
}

/** The empty airplane as one item. */
export function emptyItem(empty: Empty): LoadItem {
  return {
    name: 'empty airplane',
    mass: empty.mass.value,
    arm: empty.arm.value,
    massU95: empty.mass.u95,
    armU95: empty.arm.u95,
  };
}

function reasonOf(ballast: number, maximum: number | null, margin: EnvelopeMargin | null): string {
  if (maximum !== null && ballast > maximum) return `more than the ${maximum} kg this place may hold`;
  if (margin === null) return 'no envelope to compare with';
  if (margin.mass < 0) return 'over the highest mass of the envelope';
  return margin.inside ? 'inside, uncertainty included' : 'not inside with its uncertainty';
}

function placeItem(
  point: LoadPoint,
  airplane: Airplane | undefined,
  options: WeightOptions,
): { item?: LoadItem; unknown?: string } {
  const station = airplane?.loading.stations.find((one) => one.name === point.station);
  const tank = airplane?.fuel.tanks.find((one) => one.name === point.station);
  const arm = point.arm?.si ?? station?.arm.si ?? tank?.arm?.si;
  const density = densityOf(options);
  const volume = point.volume?.si;
  const mass = point.mass?.si ?? (volume === undefined ? undefined : volume * density.value);
  if (arm === undefined) return { unknown: `${point.station} has no arm` };
  if (mass === undefined) return { unknown: `${point.station} has neither mass nor volume` };
  return { item: { name: point.station, mass, arm, massU95: point.mass ? 0 : (volume ?? 0) * density.u95 } };
}

/** Pilot alone, with tanks full and with the reserve: the two ends of every early flight. */
function usualCases(
  airplane: Airplane | undefined,
  options: WeightOptions,
): { name: string; items: LoadItem[]; unknown: string[] }[] {
  const pilot = airplane?.loading.pilotMass?.si;
  const seat = airplane?.loading.stations.find((one) => one.kind === 'seat');
  if (!airplane || pilot === undefined || !seat) return [];
  const density = densityOf(options);
  const tanks = airplane.fuel.tanks.filter((tank) => tank.arm !== undefined);
  const fuel = tanks.map((tank) => {
    const volume = tank.usable?.si ?? tank.capacity.si;
    return { name: tank.name, mass: volume * density.value, arm: tank.arm?.si ?? 0, massU95: volume * density.u95 };
  });
  const crew = { name: 'pilot', mass: pilot, arm: seat.arm.si };
  const unknown = tanks.length < airplane.fuel.tanks.length ? ['a tank has no arm'] : [];
  return [
    { name: 'pilot, tanks full', items: [crew, ...fuel], unknown },
    { name: 'pilot, no usable fuel', items: [crew], unknown: [] },
  ];
}
