/**
 * Climbs and descents at one airspeed. The rate only says whether it is a climb, a descent or neither; how steady the
 * rate looks is no criterion, because choosing the steadiest-looking climb biases its rate.
 */
import type { Recording } from '../logs/index.ts';
import { fromSi, toSi } from '../units/index.ts';
import { type Condition, within } from './condition.ts';
import { findHeld } from './find.ts';
import { flightSignals } from './flight-signals.ts';
import type { Excluded, Findings, Segment } from './segment.ts';

export interface ClimbCriteria {
  /** bank under this, rad */
  bank: number;
  /** airspeed within this of the run's median, m/s */
  speed: number;
  /** airspeed changing slower than this, m/s2 */
  acceleration: number;
  /** height changing at least this fast, m/s */
  leastRate: number;
  /** dropped at the start, s */
  settle: number;
  /** shortest run that is used, s, and least height it gains or loses, m */
  dwell: number;
  gain: number;
}

/** Common practice, no source. What length a rate worth publishing needs is the method's rule, not the finder's. */
export const CLIMB_CRITERIA: ClimbCriteria = {
  bank: toSi(10, 'deg'),
  speed: toSi(4, 'kt'),
  acceleration: 0.1,
  leastRate: 0.75,
  settle: 10,
  dwell: 30,
  gain: 60,
};

/**
 * Find climbs and descents at constant airspeed.
 * @param recording aligned logs with airspeed and height, object
 * @param criteria what must hold; the usual ones when left out, object
 * @returns runs with role `climb` or `descent`, those left out with reasons, criteria in words
 */
export function findClimbs(recording: Recording, criteria: ClimbCriteria = CLIMB_CRITERIA): Findings {
  const signals = flightSignals(recording);
  if (!signals?.height.some((value) => !Number.isNaN(value)))
    return { segments: [], excluded: [], criteria: ['airspeed and height are needed'] };
  const { times, height, bank } = signals;
  const degrees = Math.round(fromSi(criteria.bank, 'deg'));
  const knots = Math.round(fromSi(criteria.speed, 'kt'));
  const conditions: Condition[] = [
    ...(bank ? [within(`bank under ${degrees}°`, bank.values, criteria.bank)] : []),
    within(`airspeed changing under ${criteria.acceleration} m/s²`, signals.acceleration, criteria.acceleration),
    within(`airspeed within ${knots} kt`, signals.speed, criteria.speed, 'own median'),
  ];
  const segments: Segment[] = [];
  const excluded: Excluded[] = [];
  for (const [role, side] of [
    ['climb', 1],
    ['descent', -1],
  ] as const) {
    const moving: Condition = {
      words: `in a ${role}`,
      values: signals.heightRate.map((rate) => side * rate),
      about: 'fixed',
      low: criteria.leastRate,
      high: Number.POSITIVE_INFINITY,
      // A run goes on until the rate has all but gone: ending it at a weak moment would pick the strong ones.
      slack: 0.7 * criteria.leastRate,
    };
    const { stretches } = findHeld({
      times,
      conditions: [moving, ...conditions],
      dwell: criteria.dwell,
      settle: criteria.settle,
      bridge: signals.hold,
      remarkFrom: Number.POSITIVE_INFINITY,
    });
    for (const stretch of stretches) {
      const span = { fromSeconds: times[stretch.from] ?? 0, toSeconds: times[stretch.to] ?? 0 };
      const gained = Math.abs((height[stretch.to] ?? Number.NaN) - (height[stretch.from] ?? Number.NaN));
      const lasted = span.toSeconds - span.fromSeconds;
      if (gained >= criteria.gain)
        segments.push({ ...span, role, reason: `found: ${role} at constant airspeed`, byHand: false });
      else
        excluded.push({
          ...span,
          reason: `${role} of ${Math.round(gained)} m in ${Math.round(lasted)} s: less than ${criteria.gain} m`,
        });
    }
  }
  const byTime = (a: { fromSeconds: number }, b: { fromSeconds: number }) => a.fromSeconds - b.fromSeconds;
  return {
    segments: segments.sort(byTime),
    excluded: excluded.sort(byTime),
    criteria: [
      ...conditions.map((one) => one.words),
      `height changing at least ${criteria.leastRate} m/s; ${criteria.dwell} s and ${criteria.gain} m or more`,
      bank?.source ?? 'no channel tells the bank: straight flight could not be checked',
    ],
  };
}
