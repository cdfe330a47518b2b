/** Ballast for a wanted centre of gravity or mass: how much, where, and what it gives after rounding to what is there. */
import { OutOfRange } from '../remarks/index.ts';
import { type Balance, balanceOf, type LoadItem } from './moments.ts';

/** Arm of ballast and wanted arm closer than this share of the range of arms: the mass would run away. */
export const LEAST_LEVER = 0.05;

/**
 * Ballast that brings the centre of gravity to a wanted arm, W_b = W (x_r - CG) / (x_b - x_r).
 * @param mass mass before ballast, kg, above 0
 * @param arm centre of gravity before ballast, m
 * @param wanted wanted centre of gravity, m
 * @param ballastArm arm of the ballast place, m
 * @param armRange distance between the outermost load places, m, above 0
 * @returns ballast, kg, 0 or more
 * @throws OutOfRange when the place is at the wrong end, or too near the wanted arm to have leverage
 * @source FAA-H-8083-1, ballast [faa-h-8083-1]; the 5 % rule is common practice [practice]
 */
export function ballastFor(mass: number, arm: number, wanted: number, ballastArm: number, armRange: number): number {
  const lever = ballastArm - wanted;
  if (Math.abs(lever) < LEAST_LEVER * armRange) {
    throw new OutOfRange('lever of the ballast', lever, `at least ${LEAST_LEVER * armRange} m from the wanted arm`);
  }
  const ballast = (mass * (wanted - arm)) / lever;
  if (ballast < 0) throw new OutOfRange('ballast', ballast, '0 kg or more; this place is at the wrong end');
  return ballast;
}

/**
 * A mass rounded up to what is on hand.
 * @param mass kg
 * @param step smallest bag or plate, kg, above 0
 * @returns kg, at least the mass asked
 * @source common practice: ballast is rounded up and the case worked out again [practice]
 */
export function roundedUp(mass: number, step: number): number {
  return Math.ceil(Number((mass / step).toPrecision(9))) * step;
}

/** A place that takes load: its arm in m, and the most it may hold in kg (null where nothing is stated). */
export interface LoadPlace {
  name: string;
  arm: number;
  maximum: number | null;
}

export interface WantedLoad {
  /** kg, all up */
  mass: number;
  /** m aft of the datum; between the two */
  from: number;
  to: number;
}

export interface FoundLoad {
  load: { name: string; mass: number; arm: number }[];
  balance: Balance;
}

/** More places than this are not searched: no builder ballasts that many. */
const MOST_PLACES = 8;

/**
 * Load on the places given that reaches a mass with the centre of gravity in a band: the fewest places, then the least
 * distance from the middle of the band.
 * @param base what is aboard already, kg and m
 * @param places where load may go, list
 * @param wanted mass in kg and band of arms in m
 * @param step smallest bag or plate, kg, above 0
 * @returns the load with the mass and arm it gives after rounding; null where the places cannot do it
 * @source moments, FAA-H-8083-1 [faa-h-8083-1]; the search is the project's own [own]
 */
export function loadFor(
  base: readonly LoadItem[],
  places: readonly LoadPlace[],
  wanted: WantedLoad,
  step: number,
): FoundLoad | null {
  const bare = balanceOf(base);
  const add = wanted.mass - bare.mass;
  if (add < -step / 2) return null;
  const middle = (wanted.from + wanted.to) / 2;
  const momentWanted = wanted.mass * middle - bare.moment;
  const usable = places.slice(0, MOST_PLACES);
  const found = [...splits(usable, Math.max(0, add), momentWanted)].flatMap((masses) => {
    const load = usable.flatMap((place, i) => loaded(place, masses[i] ?? 0, step));
    const balance = balanceOf([...base, ...load]);
    const fits =
      Math.abs(balance.mass - wanted.mass) <= step * Math.max(1, load.length) &&
      balance.mass <= wanted.mass + step / 2 &&
      balance.arm >= wanted.from &&
      balance.arm <= wanted.to;
    return fits ? [{ load, balance, off: Math.abs(balance.arm - middle) }] : [];
  });
  found.sort((a, b) => a.load.length - b.load.length || a.off - b.off);
  const best = found[0];
  return best ? { load: best.load, balance: best.balance } : null;
}

/** Ways to share a mass among places: some full, and two that take the rest so as to meet the moment. */
function* splits(places: readonly LoadPlace[], add: number, moment: number): Generator<number[]> {
  const most = places.map((place) => place.maximum ?? add);
  for (let full = 0; full < 2 ** places.length; full += 1) {
    const base = places.map((_, i) => ((full >> i) & 1 ? (most[i] ?? 0) : 0));
    const rest = add - total(base);
    if (rest < 0) continue;
    const restMoment = moment - places.reduce((sum, place, i) => sum + place.arm * (base[i] ?? 0), 0);
    if (rest === 0) yield base;
    for (const i of places.keys()) {
      if ((full >> i) & 1) continue;
      if (rest <= (most[i] ?? 0)) yield base.with(i, rest);
      for (let j = i + 1; j < places.length; j += 1) {
        if ((full >> j) & 1) continue;
        const pair = shared(places[i], places[j], rest, restMoment, most[i] ?? 0, most[j] ?? 0);
        for (const [one, other] of pair) yield base.with(i, one).with(j, other);
      }
    }
  }
}

/** Two places share a mass: as the moment asks, else as far towards it as their limits allow. */
function shared(
  first: LoadPlace | undefined,
  second: LoadPlace | undefined,
  mass: number,
  moment: number,
  mostFirst: number,
  mostSecond: number,
): [number, number][] {
  if (!first || !second || first.arm === second.arm) return [];
  const least = Math.max(0, mass - mostFirst);
  const most = Math.min(mass, mostSecond);
  if (least > most) return [];
  const exact = (moment - mass * first.arm) / (second.arm - first.arm);
  const inside = exact >= least && exact <= most ? [exact] : [least, most];
  return inside.map((there) => [mass - there, there]);
}

function loaded(place: LoadPlace, mass: number, step: number): { name: string; mass: number; arm: number }[] {
  const rounded = Math.round(mass / step) * step;
  const allowed = place.maximum !== null && rounded > place.maximum ? rounded - step : rounded;
  return allowed > 0 ? [{ name: place.name, mass: allowed, arm: place.arm }] : [];
}

function total(masses: readonly number[]): number {
  return masses.reduce((sum, one) => sum + one, 0);
}
