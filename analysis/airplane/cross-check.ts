/**
 * The description checked against itself: figures that cannot all be right, or that leave less room than a builder
 * may think. Nothing here is refused: each remark names the fields, says why, and leaves the figures as entered.
 */
import { pressureAt, standardTemperature, trueAirspeed } from '../air/index.ts';
import { type Flag, flag, OutOfRange } from '../remarks/index.ts';
import { differenceToSi, fromSi, show, toSi } from '../units/index.ts';
import type { Airplane } from './configuration.ts';
import { loadingChecks } from './loading-checks.ts';
import { orderChecks } from './order-checks.ts';

/** A flag with the fields it concerns. */
export interface CrossRemark extends Flag {
  paths: string[];
}

export interface CrossCheck {
  paths: readonly string[];
  /** the remark, or null where the figures fit or are not stated */
  says(airplane: Airplane): string | null;
}

/**
 * Remarks on figures of a description that do not fit each other.
 * @param airplane the description, object
 * @returns remarks, none for a description without contradictions
 */
export function crossCheck(airplane: Airplane): CrossRemark[] {
  return CHECKS.flatMap(({ paths, says }) => {
    const words = says(airplane);
    return words === null ? [] : [{ ...flag('fields-disagree', words), paths: [...paths] }];
  });
}

const knots = (si: number) => show(si, 'kt', { decimals: 0 }).text;

/** more than rounding of the figures entered */
const ROUNDING = 1.02;

const CHECKS: readonly CrossCheck[] = [
  {
    paths: ['speeds.manoeuvring', 'speeds.stallClean', 'limits.loadFactor.positive'],
    says: ({ speeds: { manoeuvring, stallClean }, limits }) => {
      const n = limits.loadFactor.positive;
      if (!manoeuvring || !stallClean || !n) return null;
      const most = stallClean.si * Math.sqrt(fromSi(n.si, 'g0'));
      if (manoeuvring.si <= most * ROUNDING) return null;
      return `The manoeuvring speed, ${knots(manoeuvring.si)}, is above the clean stall times the root of the limit load factor, ${knots(most)}: between the two a full pull can exceed the limit load before the wing stalls.`;
    },
  },
  {
    paths: ['speeds.approach', 'speeds.stallLanding'],
    says: ({ speeds: { approach, stallLanding } }) =>
      approach && stallLanding && approach.si < 1.3 * stallLanding.si * (2 - ROUNDING)
        ? `The approach speed, ${knots(approach.si)}, is below 1.3 x the landing stall, ${knots(1.3 * stallLanding.si)}.`
        : null,
  },
  {
    paths: ['speeds.liftOff', 'speeds.stallLanding'],
    says: ({ speeds: { liftOff, stallLanding } }) =>
      liftOff && stallLanding && liftOff.si < 1.1 * stallLanding.si * (2 - ROUNDING)
        ? `The lift-off speed, ${knots(liftOff.si)}, is below 1.1 x the landing stall, ${knots(1.1 * stallLanding.si)}.`
        : null,
  },
  { paths: ['speeds.neverExceed', 'limits.flutterTrueAirspeed', 'plan.practiceCeiling'], says: flutterAtCeiling },
  {
    paths: ['plan.turnBackFuel', 'fuel.tanks'],
    says: ({ plan, fuel }) =>
      plan.turnBackFuel && plan.turnBackFuel.si > usable(fuel) / 2
        ? 'The fuel at which a flight ends is more than half of what the feeding tanks hold: little is left to fly on.'
        : null,
  },
  { paths: ['fuel.tanks', 'engine.takeoffFuelFlow', 'fuel.reserve'], says: endurance },
  {
    paths: ['fuel.tanks'],
    says: ({ fuel }) => {
      const over = fuel.tanks.find((tank) => tank.usable && tank.usable.si > tank.capacity.si);
      return over ? `Tank ${over.name} has more usable fuel than it holds.` : null;
    },
  },
  {
    paths: ['fuel.poweredTransfer', 'fuel.tanks'],
    says: ({ fuel }) => {
      const names = new Set(fuel.tanks.map((tank) => tank.name));
      const lost = fuel.tanks.find((tank) => tank.transfersTo !== undefined && !names.has(tank.transfersTo));
      if (lost) return `Tank ${lost.name} transfers to ${lost.transfersTo}, which is no tank.`;
      const moves = fuel.tanks.some((tank) => tank.transfersTo !== undefined);
      if (fuel.poweredTransfer && !moves) return 'There is powered transfer, but no tank says where it transfers to.';
      return !fuel.poweredTransfer && moves ? 'A tank transfers to another, but powered transfer is off.' : null;
    },
  },
  {
    paths: ['fuel.sources', 'fuel.tanks'],
    says: ({ fuel }) => {
      const feeding = fuel.tanks.filter((tank) => tank.transfersTo === undefined).length;
      return fuel.sources > feeding + 1
        ? `${fuel.sources} fuel feeds can be selected, but only ${feeding} tanks feed the engine.`
        : null;
    },
  },
  {
    paths: ['electrical.batteries', 'electrical.essentialLoad'],
    says: ({ electrical: { batteries, essentialLoad } }) => {
      const charge = batteries.reduce((sum, battery) => sum + battery.capacity.si, 0);
      if (!essentialLoad || essentialLoad.si <= 0 || charge / essentialLoad.si >= toSi(30, 'min')) return null;
      return `Full batteries carry the essential load for ${show(charge / essentialLoad.si, 'min', { decimals: 0 }).text}, less than 30 min.`;
    },
  },
  {
    paths: ['electrical.generator', 'electrical.essentialLoad'],
    says: ({ electrical: { generator, essentialLoad } }) =>
      generator !== false && essentialLoad && essentialLoad.si > 0.8 * generator.rating.si
        ? 'The essential load alone is over 80 % of the generator’s rating.'
        : null,
  },
  {
    paths: ['engine.electronicControl', 'engine.lanes'],
    says: ({ engine }) =>
      engine.electronicControl && engine.lanes === undefined
        ? 'The engine control is electronic, but the number of its lanes is not stated.'
        : !engine.electronicControl && engine.lanes !== undefined
          ? 'Lanes are stated, but the engine control is not electronic.'
          : null,
  },
  ...orderChecks,
  ...loadingChecks,
];

/** Red line as a true airspeed at the top of the practice band, on a standard day, against the flutter figure. */
function flutterAtCeiling({ speeds: { neverExceed }, limits, plan, place }: Airplane): string | null {
  const flutter = limits.flutterTrueAirspeed;
  const ceiling = plan.practiceCeiling?.si ?? place.elevation.si;
  if (!neverExceed || !flutter) return null;
  try {
    const tas = trueAirspeed(neverExceed.si, pressureAt(ceiling), standardTemperature(ceiling));
    if (tas <= flutter.si * ROUNDING - differenceToSi(1, 'kt')) return null;
    return `The red line is ${knots(tas)} true at the top of the practice band, above the flutter figure of ${knots(flutter.si)} true: the lower of the two binds at height.`;
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}

function usable(fuel: Airplane['fuel']): number {
  return fuel.tanks
    .filter((tank) => tank.transfersTo === undefined)
    .reduce((sum, tank) => sum + (tank.usable?.si ?? tank.capacity.si), 0);
}

/** Shortest useful endurance: an hour in the air and the reserve, at three quarters of the take-off burn. */
function endurance({ fuel, engine }: Airplane): string | null {
  const flow = engine.takeoffFuelFlow?.si;
  if (!flow) return null;
  const seconds = usable(fuel) / (0.75 * flow);
  const needed = toSi(1, 'h') + (fuel.reserve?.si ?? toSi(1, 'h'));
  if (seconds >= needed) return null;
  return `The feeding tanks last ${show(seconds, 'h', { decimals: 1 }).text} at three quarters of the take-off burn: not an hour of flight with its reserve.`;
}
