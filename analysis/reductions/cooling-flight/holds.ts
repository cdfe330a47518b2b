/** Stretches of steady flight: power, speed, height and door at rest. The temperatures are not looked at for that. */
import type { Recording } from '../../logs/index.ts';
import {
  DROPPED,
  type Excluded,
  intersect,
  placeSegments,
  type SegmentEdit,
  type SettingWords,
  type Stretch,
  steadyLevels,
} from '../../segments/index.ts';
import { toSi } from '../../units/index.ts';
import type { FlightGrid } from './flight-grid.ts';
import { POWER_WORDS } from './point.ts';

export interface Hold {
  /** recording time, s */
  fromSeconds: number;
  toSeconds: number;
  byHand: boolean;
  label?: string;
  reason: string;
}

/** Dropped at the start of a hold, and the shortest that is looked at, s. */
const SETTLE = 20;
const DWELL = 120;

// Power within 2 % as on the ground, the others common practice, no source: how far a hand lets each wander.
const POWER: SettingWords = {
  tolerance: (level) => 0.03 * level,
  wander: (level) => 0.01 * level,
  wanderSeconds: 20,
  bridgeSeconds: 15,
  unrest: (level) => 0.02 * level,
};
const KNOT = toSi(1, 'kt');
const SPEED: SettingWords = {
  tolerance: () => 3 * KNOT,
  wander: () => KNOT,
  wanderSeconds: 30,
  bridgeSeconds: 20,
  unrest: () => 3 * KNOT,
};
const HEIGHT: SettingWords = {
  tolerance: () => 30,
  wander: () => 10,
  wanderSeconds: 30,
  bridgeSeconds: 20,
  unrest: () => 30,
};
const DOOR: SettingWords = {
  tolerance: () => 0.03,
  wander: () => 0,
  wanderSeconds: 0,
  bridgeSeconds: 5,
  unrest: () => 0.03,
};

/**
 * Steady flight found in a log: where every setting stood at a level of its own.
 * @param flight the flight on its grid, object
 * @returns holds in order, and the criteria in words
 */
export function holdsFound(flight: FlightGrid): { holds: Hold[]; criteria: string[] } {
  const { start, dt, n } = flight.grid;
  const settings: { words: string; values: Float64Array | null; setting: SettingWords }[] = [
    { words: 'height within 30 m', values: flight.height, setting: HEIGHT },
    { words: 'door within 3 % of travel', values: flight.door, setting: DOOR },
    { words: 'engine speed within 2 %', values: flight.engineSpeed, setting: POWER },
    { words: `${POWER_WORDS[flight.measure]} within 2 %`, values: flight.power, setting: POWER },
    { words: 'airspeed within 3 kt', values: flight.ias, setting: SPEED },
  ];
  let held: Stretch[] = [{ from: 0, to: n - 1 }];
  const words: string[] = [];
  for (const { words: said, values, setting } of settings) {
    if (!values?.some((value) => !Number.isNaN(value))) continue;
    held = intersect(held, steadyLevels(values, dt, setting));
    words.push(said);
  }
  const reason = `found: ${words.join('; ')}`;
  const holds = held
    .map(({ from, to }) => ({ fromSeconds: start + from * dt + (from > 0 ? SETTLE : 0), toSeconds: start + to * dt }))
    .filter((one) => one.toSeconds - one.fromSeconds >= DWELL)
    .map((one): Hold => ({ ...one, byHand: false, reason }));
  return { holds, criteria: [...words, `${SETTLE} s dropped at the start; ${DWELL} s or longer`] };
}

/**
 * Steady flight set by hand.
 * @param recording aligned logs, object
 * @param edits segments as edited, list
 * @returns holds, and those dropped with their reason
 * @throws InputProblem when a segment names a file that is not in the recording
 */
export function holdsSet(recording: Recording, edits: readonly SegmentEdit[]): { holds: Hold[]; excluded: Excluded[] } {
  const { segments, dropped } = placeSegments(recording, edits);
  const holds = segments
    .filter((one) => one.role !== DROPPED)
    .map(({ fromSeconds, toSeconds, reason, label }) => ({
      fromSeconds,
      toSeconds,
      byHand: true,
      reason,
      ...(label === undefined ? {} : { label }),
    }));
  return { holds, excluded: dropped };
}
