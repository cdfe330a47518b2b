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
  const usable = places.slice(0, MOST_PLACES);
  let best: Tried | null = null;
  for (const masses of splits(usable, Math.max(0, add), wanted.mass * middle - bare.moment)) {
    const tried = tryLoad(masses, usable, bare, wanted, step);
    if (
      tried &&
      (best === null || tried.places < best.places || (tried.places === best.places && tried.off < best.off))
    ) {
      best = tried;
    }
  }
  if (best === null) return null;
  const { masses } = best;
  const load = usable.flatMap((place, i) => {
    const mass = masses[i] ?? 0;
    return mass > 0 ? [{ name: place.name, mass, arm: place.arm }] : [];
  });
  return { load, balance: balanceOf([...base, ...load]) };
}

interface Tried {
  masses: number[];
  places: number;
  off: number;
}

/** A split rounded to bags, where it fits the mass and the band. */
function tryLoad(
  masses: readonly number[],
  places: readonly LoadPlace[],
  bare: Balance,
  wanted: WantedLoad,
  step: number,
): Tried | null {
  let { mass, moment } = bare;
  let used = 0;
  const rounded: number[] = [];
  for (const [i, place] of places.entries()) {
    const here = inBags(masses[i] ?? 0, place.maximum, step);
    rounded.push(here);
    if (here > 0) used += 1;
    mass += here;
    moment += here * place.arm;
  }
  const arm = moment / mass;
  const fits =
    Math.abs(mass - wanted.mass) <= step * Math.max(1, used) &&
    mass <= wanted.mass + step / 2 &&
    arm >= wanted.from &&
    arm <= wanted.to;
  return fits ? { masses: rounded, places: used, off: Math.abs(arm - (wanted.from + wanted.to) / 2) } : null;
}

function inBags(mass: number, maximum: number | null, step: number): number {
  const rounded = Math.round(mass / step) * step;
  return maximum !== null && rounded > maximum ? rounded - step : rounded;
}

/** Ways to share a mass among places: some full, and two that take the rest so as to meet the moment. */
function splits(places: readonly LoadPlace[], add: number, moment: number): number[][] {
  const most = places.map((place) => place.maximum ?? add);
  const found: number[][] = [];
  for (let full = 0; full < 2 ** places.length; full += 1) {
    const base = most.map((mass, i) => ((full >> i) & 1 ? mass : 0));
    let rest = add;
    let restMoment = moment;
    for (const [i, mass] of base.entries()) {
      rest -= mass;
      restMoment -= mass * (places[i]?.arm ?? 0);
    }
    if (rest < 0) continue;
    if (rest === 0) found.push(base);
    for (const [i, first] of places.entries()) {
      if ((full >> i) & 1) continue;
      const mostFirst = most[i] ?? 0;
      if (rest <= mostFirst) found.push(base.with(i, rest));
      for (const [k, second] of places.slice(i + 1).entries()) {
        const j = i + 1 + k;
        if ((full >> j) & 1 || first.arm === second.arm) continue;
        const least = Math.max(0, rest - mostFirst);
        const highest = Math.min(rest, most[j] ?? 0);
        if (least > highest) continue;
        const exact = (restMoment - rest * first.arm) / (second.arm - first.arm);
        const there = exact >= least && exact <= highest ? [exact] : [least, highest];
        for (const mass of there) found.push(base.with(i, rest - mass).with(j, mass));
      }
    }
  }
  return found;
}
