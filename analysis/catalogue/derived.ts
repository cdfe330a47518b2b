/**
 * Numbers worked out from others: factors on a stall speed, a margin on a voltage. As each line states; the factors are
 * the rule named or common practice. Status follows the weakest figure used, so an estimate stays an estimate.
 */
import type { Airplane } from '../airplane/index.ts';
import type { Result } from '../results/index.ts';
import { differenceToSi, toSi } from '../units/index.ts';

/** An accepted result, with the test it answered. */
export interface AcceptedResult {
  kind: string;
  test?: string;
  result: Result;
  /** what it is called on a card: `result 3` */
  name?: string;
}

/** What has been accepted so far; empty before the first flight. */
export interface Known {
  results?: readonly AcceptedResult[];
}

export interface Worked {
  si: number;
  status: 'estimated' | 'designer' | 'measured' | 'stated';
  /** source, or how it was worked out */
  from: string;
  scale?: 'IAS' | 'CAS' | 'TAS';
  /** as entered, where nothing was worked out */
  entered?: { value: number; unit: string };
}

type Work = (airplane: Airplane, known: Known) => Worked | null;
type Speed = NonNullable<Airplane['speeds']['climb']>;

const KNOT = differenceToSi(1, 'kt');

/** by reference path; each returns null where a figure it needs is missing */
export const DERIVED: Readonly<Record<string, Work>> = {
  'derived.loadFactorCap': (a) => times(a.limits.loadFactor.positive, 0.8, '0.8 x the positive limit load factor'),
  'derived.lowLoadFactorFloor': (a) => {
    const engine = a.limits.loadFactor.engineLow;
    if (!engine) return null;
    const structure = a.limits.loadFactor.negative?.si ?? 0;
    const si = Math.max(0, engine.si, structure);
    return { si, status: 'stated', from: 'the higher of 0 g, the engine maker’s and the designer’s lowest' };
  },
  'derived.acceleratedStallEntry': (a) => speed(a.speeds.manoeuvring, 0.8, 0, '0.8 x manoeuvring speed'),
  'derived.approach': approach,
  'derived.approachMinus5': (a, known) => {
    const at = approach(a, known);
    if (!at) return null;
    const { si, from, entered: _, ...rest } = at;
    return { ...rest, si: si - 5 * KNOT, from: `${from}, less 5 kt` };
  },
  'derived.autopilotFloor': (a) => {
    const warning = a.speeds.stallWarning;
    return warning?.status === 'measured' ? speed(warning, 1, 5, 'measured stall warning plus 5 kt') : null;
  },
  'derived.coolingClimbFast': (a) => speed(a.speeds.climb, 1, 10, 'climb speed plus 10 kt'),
  'derived.fiftyFoot': (a, known) =>
    measuredStall(known, CLEAN, 1.2, '1.2 x measured clean stall') ??
    speed(a.speeds.stallClean, 1.2, 0, '1.2 x predicted clean stall'),
  'derived.firstFlightMaximum': (a) => speed(a.speeds.stallClean, 1.5, 0, '1.5 x predicted clean stall'),
  'derived.firstSlow': (a) => speed(a.speeds.stallLanding, 1, 5, 'predicted landing stall plus 5 kt'),
  'derived.gearFirstSpeed': gearFirstSpeed,
  'derived.liftOff': (a) => {
    const stated = speed(a.speeds.liftOff, 1, 0, 'lift-off speed of the description');
    const least = speed(a.speeds.stallLanding, 1.1, 0, '1.1 x landing stall');
    return stated && least && least.si > stated.si ? least : stated;
  },
  'derived.speedCleared': (a) => speed(a.speeds.cleared, 1, 0, 'highest speed accepted so far'),
  'derived.taxiCap': (a) => {
    const { stallClean, stallLanding } = a.speeds;
    const lowest = !stallClean || (stallLanding && stallLanding.si < stallClean.si) ? stallLanding : stallClean;
    return speed(lowest, 0.8, 0, '0.8 x lowest predicted stall');
  },
  'derived.engineControlFloor': (a) => {
    const minimum = a.limits.engineControl.minimum;
    return minimum ? { si: minimum.si + 1, status: 'stated', from: 'lowest feed plus 1 V' } : null;
  },
  'derived.hotDay': (a) => {
    const own = a.plan.hotDayAir;
    if (own) return { si: own.si, status: 'stated', from: 'agreed for this field', entered: own };
    const standard = a.plan.hotDay === 'cs22' ? { value: 38, unit: 'degC' } : { value: 100, unit: 'degF' };
    const from = a.plan.hotDay === 'cs22' ? 'CS 22.1047' : 'former 14 CFR 23.1043';
    return { si: toSi(standard.value, standard.unit), status: 'stated', from, entered: standard };
  },
};

const LANDING = ['stall-landing'];
const CLEAN = ['stall-clean-gear-up', 'stall-clean'];

/** 1.3 x landing stall [14cfr23-73]; until stalls are measured, the reference of the first flight. */
function approach(a: Airplane, known: Known): Worked | null {
  return (
    measuredStall(known, LANDING, 1.3, '1.3 x measured landing stall') ??
    (a.speeds.stallLanding?.status === 'measured'
      ? speed(a.speeds.stallLanding, 1.3, 0, '1.3 x measured landing stall')
      : speed(a.speeds.approach, 1, 0, 'first-flight reference'))
  );
}

function gearFirstSpeed(a: Airplane, known: Known): Worked | null {
  const stall =
    measuredStall(known, CLEAN, 1.3, '1.3 x measured clean stall') ??
    speed(a.speeds.stallClean, 1.3, 0, '1.3 x clean stall');
  const warning = speed(a.speeds.stallWarning, 1, 5, 'stall warning plus 5 kt');
  return stall && warning && warning.si > stall.si ? warning : stall;
}

function times(
  figure: { si: number; status?: Worked['status'] | undefined } | undefined,
  factor: number,
  from: string,
) {
  return figure ? { si: figure.si * factor, status: figure.status ?? ('stated' as const), from } : null;
}

function speed(figure: Speed | undefined, factor: number, plusKnots: number, from: string): Worked | null {
  if (!figure) return null;
  const plain = factor === 1 && plusKnots === 0;
  return {
    si: figure.si * factor + plusKnots * KNOT,
    status: figure.status,
    from,
    scale: figure.scale,
    ...(plain ? { entered: { value: figure.value, unit: figure.unit } } : {}),
  };
}

/** Stall speed of an accepted result, calibrated, times a factor, turned into indicated where the table reaches it. */
function measuredStall(known: Known, tests: readonly string[], factor: number, from: string): Worked | null {
  for (const test of tests) {
    const accepted = known.results?.findLast((one) => one.kind === 'stall' && one.test === test);
    const value = accepted?.result.quantities.find((one) => one.name === 'stall-speed')?.value;
    if (typeof value !== 'number') continue;
    const calibrated = value * factor;
    const indicated = toIndicated(calibrated, known);
    return indicated === null
      ? { si: calibrated, status: 'measured', from, scale: 'CAS' }
      : { si: indicated, status: 'measured', from: `${from}, by the position error table`, scale: 'IAS' };
  }
  return null;
}

/** Indicated airspeed at a calibrated one, between the speeds flown; null outside them or without a table. */
function toIndicated(calibrated: number, known: Known): number | null {
  const result = known.results?.findLast((one) => one.kind === 'airspeed')?.result;
  const table = result?.tables.find((one) => one.name === 'position-error');
  if (!table) return null;
  const at = (name: string) => table.columns.findIndex((column) => column.name === name);
  const [ias, cas] = [at('indicated-airspeed'), at('calibrated-airspeed')];
  const points = table.rows
    .flatMap((row) => {
      const [indicated, flown] = [row[ias], row[cas]];
      return typeof indicated === 'number' && typeof flown === 'number' ? [{ indicated, flown }] : [];
    })
    .sort((left, right) => left.flown - right.flown);
  for (const [i, high] of points.entries()) {
    const low = points[i - 1];
    if (!low || calibrated < low.flown || calibrated > high.flown) continue;
    const share = high.flown === low.flown ? 0 : (calibrated - low.flown) / (high.flown - low.flown);
    return low.indicated + share * (high.indicated - low.indicated);
  }
  return null;
}
