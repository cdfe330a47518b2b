/** Climbs written on a card: two heights of the altimeter, a stopwatch, an airspeed held. */
import {
  densityAltitude,
  equivalentAirspeed,
  impactPressure,
  machOf,
  pressureAt,
  staticTemperature,
  tapelineRate,
  trueAirspeed,
} from '../../air/index.ts';
import { flag } from '../../remarks/index.ts';
import type { ClimbPoint } from './input.ts';
import type { AirData } from './measure-run.ts';
import type { ClimbRun } from './run.ts';

// Reading a needle and a stopwatch: half-widths 10 ft and 0.5 s at either end, common practice, no source.
const READING = 3;
const STOPWATCH = 0.5;

/**
 * A run from the figures of a card.
 * @param point what was written, SI inside
 * @param index place on the card, from 0, count
 * @param air how the instruments are to be read
 * @returns the run
 * @throws OutOfRange when a value lies outside the relations of air data
 * @source tapeline by T/T_standard at mid [ftm-108]; reading errors [practice]
 */
export function runFromCard(point: ClimbPoint, index: number, air: AirData): ClimbRun {
  const ias = point['indicated-airspeed'].si;
  const cas = air.cas(ias);
  const Hp = (point.bottom.si + point.top.si) / 2;
  const gained = point.top.si - point.bottom.si;
  const p = pressureAt(Hp);
  const mach = machOf(impactPressure(cas), p);
  const T = staticTemperature(point['outside-air-temperature'].si, mach, air.recovery);
  const rate = tapelineRate(gained / point.time.si, T, Hp);
  const share = Math.hypot((Math.SQRT2 * READING) / 2 / gained, STOPWATCH / 2 / point.time.si);
  return {
    file: 'card',
    label: point.label ?? `climb ${index + 1}`,
    fromSeconds: 0,
    toSeconds: point.time.si,
    ias,
    cas,
    tas: trueAirspeed(cas, p, T),
    eas: equivalentAirspeed(cas, p),
    Hp,
    Hd: densityAltitude(p, T),
    p,
    T,
    heading: point['heading-magnetic']?.si ?? null,
    mass: point.mass?.si ?? null,
    rate,
    noise: { u: Math.abs(rate) * share, nu: 50 },
    ends: { u: 0, nu: 50 },
    dVdt: 0,
    gained,
    engineSpeed: point['engine-speed']?.si ?? null,
    manifoldPressure: null,
    fuelFlow: null,
    flags: [flag('method-note', 'from two heights and a stopwatch; a change of speed between them is not seen')],
  };
}
