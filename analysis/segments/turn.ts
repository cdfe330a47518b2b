/** Level turns at constant bank and airspeed, long enough to point everywhere. */
import type { Recording } from '../logs/index.ts';
import { seriesOf } from '../logs/index.ts';
import { fromSi, toSi } from '../units/index.ts';
import { type Condition, type Stretch, within } from './condition.ts';
import { findHeld } from './find.ts';
import { flightSignals } from './flight-signals.ts';
import { sampleAt, unwrapped } from './sample-at.ts';
import type { Excluded, Findings, Segment } from './segment.ts';

export interface TurnCriteria {
  /** bank from least to most, rad */
  leastBank: number;
  mostBank: number;
  /** bank within this of the turn's median, rad */
  bank: number;
  /** airspeed within this of the turn's median, m/s */
  speed: number;
  /** height within this of the turn's median, m */
  height: number;
  /** turned at least this far, rad */
  turned: number;
  /** dropped after roll-in, s */
  settle: number;
}

/** Common practice, no source: a turn must nearly close before it says anything about the wind. */
export const TURN_CRITERIA: TurnCriteria = {
  leastBank: toSi(8, 'deg'),
  mostBank: toSi(45, 'deg'),
  bank: toSi(6, 'deg'),
  speed: toSi(4, 'kt'),
  height: 45,
  turned: toSi(300, 'deg'),
  settle: 5,
};

/**
 * Find level turns at constant bank and airspeed.
 * @param recording aligned logs with an airspeed, object
 * @param criteria what must hold; the usual ones when left out, object
 * @returns turns, those left out with reasons, criteria in words; none when bank or direction was not logged
 */
export function findTurns(recording: Recording, criteria: TurnCriteria = TURN_CRITERIA): Findings {
  const signals = flightSignals(recording);
  const direction = seriesOf(recording, 'track-true') ?? seriesOf(recording, 'heading-magnetic');
  if (!signals?.bank || !direction) return { segments: [], excluded: [], criteria: ['bank and direction not logged'] };
  const { times, bank } = signals;
  const turnedAt = unwrapped(sampleAt(direction, times));
  const knots = Math.round(fromSi(criteria.speed, 'kt'));
  const own: Condition[] = [
    within(`bank within ${degrees(criteria.bank)}°`, bank.values, criteria.bank, 'own median'),
    within(`airspeed within ${knots} kt`, signals.speed, criteria.speed, 'own median'),
    ...(signals.height.some((value) => !Number.isNaN(value))
      ? [within(`height within ${criteria.height} m`, signals.height, criteria.height, 'own median')]
      : []),
  ];
  const segments: Segment[] = [];
  const excluded: Excluded[] = [];
  const words = own.map((one) => one.words);
  // Left and right apart, each as a condition of its own sign.
  for (const side of [-1, 1]) {
    const { stretches } = findHeld({
      times,
      conditions: [
        banked(
          bank.values.map((value) => side * value),
          criteria,
        ),
        ...own,
      ],
      dwell: 20,
      settle: criteria.settle,
      bridge: signals.hold,
      remarkFrom: Number.POSITIVE_INFINITY,
    });
    for (const stretch of stretches) {
      const span = { fromSeconds: times[stretch.from] ?? 0, toSeconds: times[stretch.to] ?? 0 };
      const angle = turnedIn(turnedAt, stretch);
      if (angle >= criteria.turned)
        segments.push({ ...span, role: 'turn', reason: `found: ${words.join('; ')}`, byHand: false });
      else if (angle >= criteria.turned / 2)
        excluded.push({ ...span, reason: `turned only ${degrees(angle)}° of ${degrees(criteria.turned)}°` });
    }
  }
  return {
    segments: segments.sort((a, b) => a.fromSeconds - b.fromSeconds),
    excluded,
    criteria: [
      `bank ${degrees(criteria.leastBank)}° to ${degrees(criteria.mostBank)}°`,
      ...words,
      `turned ${degrees(criteria.turned)}° or more; ${criteria.settle} s dropped after roll-in`,
      bank.source,
    ],
  };
}

function banked(values: Float64Array, criteria: TurnCriteria): Condition {
  const { leastBank: low, mostBank: high } = criteria;
  return { words: 'banked', values, about: 'fixed', low, high, slack: low / 2 };
}

// Net angle from the first to the last direction known inside the stretch.
function turnedIn(turned: Float64Array, stretch: Stretch): number {
  const inside = turned.subarray(stretch.from, stretch.to + 1).filter((value) => !Number.isNaN(value));
  return Math.abs((inside[inside.length - 1] ?? 0) - (inside[0] ?? 0));
}

const degrees = (angle: number) => Math.round(fromSi(angle, 'deg'));
