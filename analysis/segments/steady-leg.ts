/** Straight level legs at one airspeed. What is measured on them (airspeed error, wind, power) is no criterion. */
import type { Recording } from '../logs/index.ts';
import { fromSi, toSi } from '../units/index.ts';
import { type Condition, within } from './condition.ts';
import { findHeld } from './find.ts';
import { type FlightSignals, flightSignals } from './flight-signals.ts';
import type { Findings, Segment } from './segment.ts';

export interface LegCriteria {
  /** bank under this, rad */
  bank: number;
  /** airspeed within this of the leg's median, m/s */
  speed: number;
  /** height within this of the leg's median, m */
  height: number;
  /** airspeed changing slower than this, m/s2 */
  acceleration: number;
  /** height changing slower than this, m/s */
  heightRate: number;
  /** dropped after roll-out, s */
  settle: number;
  /** shortest leg that is used, s */
  dwell: number;
}

/** Bank, speed and height as methods for airspeed calibration ask; the rates are common practice, no source. */
export const LEG_CRITERIA: LegCriteria = {
  bank: toSi(5, 'deg'),
  speed: toSi(3, 'kt'),
  height: 30,
  acceleration: 0.08,
  heightRate: 1,
  settle: 10,
  dwell: 30,
};

/** Straight flight shorter than this between turns is no attempt at a leg and not worth a remark, s. */
const REMARK_FROM_SECONDS = 25;

/**
 * Find straight level legs at one airspeed.
 * @param recording aligned logs with an airspeed, object
 * @param criteria what must hold; the usual ones when left out, object
 * @returns legs, stretches left out with reasons, criteria in words; no legs when airspeed or every direction is missing
 */
export function findSteadyLegs(recording: Recording, criteria: LegCriteria = LEG_CRITERIA): Findings {
  const signals = flightSignals(recording);
  if (!signals) return { segments: [], excluded: [], criteria: ['no airspeed was logged'] };
  const conditions = legConditions(signals, criteria);
  const { stretches, excluded } = findHeld({
    times: signals.times,
    conditions,
    dwell: criteria.dwell,
    settle: criteria.settle,
    bridge: signals.hold,
    remarkFrom: REMARK_FROM_SECONDS,
  });
  const words = conditions.map((one) => one.words);
  const segments = stretches.map(
    (stretch): Segment => ({
      fromSeconds: signals.times[stretch.from] ?? 0,
      toSeconds: signals.times[stretch.to] ?? 0,
      role: 'leg',
      reason: `found: ${words.join('; ')}`,
      byHand: false,
    }),
  );
  return {
    segments,
    excluded,
    criteria: [
      ...words,
      `left at one and a half bands; ${criteria.settle} s dropped after roll-out; ${criteria.dwell} s or longer`,
      signals.bank?.source ?? 'no channel tells the bank: straight flight could not be checked',
    ],
  };
}

function legConditions(signals: FlightSignals, criteria: LegCriteria): Condition[] {
  const { bank } = signals;
  const degrees = Math.round(fromSi(criteria.bank, 'deg'));
  const knots = Math.round(fromSi(criteria.speed, 'kt'));
  const { height } = signals;
  return [
    ...(bank ? [within(`bank under ${degrees}°`, bank.values, criteria.bank)] : []),
    within(`airspeed changing under ${criteria.acceleration} m/s²`, signals.acceleration, criteria.acceleration),
    ...(height.some((value) => !Number.isNaN(value))
      ? [
          within(`height changing under ${criteria.heightRate} m/s`, signals.heightRate, criteria.heightRate),
          within(`height within ${criteria.height} m`, height, criteria.height, 'own median'),
        ]
      : []),
    within(`airspeed within ${knots} kt`, signals.speed, criteria.speed, 'own median'),
  ];
}
