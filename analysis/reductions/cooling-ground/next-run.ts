/** The longest next run the data support, and what it should read minute by minute. */
import type { ResultTable } from '../../results/index.ts';
import { toSi } from '../../units/index.ts';
import type { Outlook, Start } from './outlook.ts';
import { isSameCondition } from './repeatability.ts';
import { AHEAD } from './rows.ts';

const MINUTE = toSi(1, 'min');

export interface LongestRun {
  /** s, never more than half as long again as the measured run */
  seconds: number;
  /** what ends it */
  endedBy: 'caution' | 'limit' | 'not measured longer';
}

/**
 * Longest run supported: the early quantile to the caution limit (to the limit where there is no caution), the slow
 * part included, and no longer than half as long again as the condition was held.
 * @param outlook of the condition, object
 * @param start temperature and air, K
 * @param bounds caution and limit, K, null where not known
 * @returns the run, or null where neither is known
 * @throws OutOfRange never: time constants of a model are above 0
 */
export function longestRun(
  outlook: Outlook,
  start: Start,
  bounds: { caution: number | null; limit: number | null },
): LongestRun | null {
  const bound = bounds.caution ?? bounds.limit;
  if (bound === null) return null;
  const { model } = outlook;
  const horizon = AHEAD * (model.toSeconds - model.fromSeconds);
  const { early } = outlook.timeToLimit(start, bound);
  if (early >= horizon) return { seconds: horizon, endedBy: 'not measured longer' };
  return { seconds: early, endedBy: bounds.caution === null ? 'limit' : 'caution' };
}

/**
 * Table of longest runs by condition: from the temperature it was started at and from idle, in test air and hot air.
 * @param outlooks of the main temperature, list
 * @param bounds caution and limit, K
 * @param hotAir air of the hot day, K
 * @param idle temperature the run settled at in idle, K, or null
 * @returns the table
 */
export function longestRunTable(
  outlooks: readonly Outlook[],
  bounds: { caution: number | null; limit: number | null },
  hotAir: number,
  idle: number | null,
): ResultTable {
  const rows = outlooks.map((outlook) => {
    const { model } = outlook;
    const air = model.air;
    // what cooled down from a hotter condition is asked about from where it settles
    const start = Math.min(model.start, (air ?? 0) + model.excess);
    const at = (temperature: number, inAir: number | null) =>
      inAir === null ? null : longestRun(outlook, { temperature, air: inAir }, bounds);
    const test = air === null ? longestRun(outlook, { temperature: start, air: 0 }, bounds) : at(start, air);
    const hot = air === null || hotAir <= air ? null : at(start, hotAir);
    const fromIdle = idle === null ? null : at(idle, air);
    return [
      model.label,
      model.engineSpeed,
      model.exit,
      model.fan,
      start,
      air,
      test?.seconds ?? null,
      test?.endedBy ?? null,
      fromIdle?.seconds ?? null,
      hot === null ? null : hotAir,
      hot?.seconds ?? null,
      hot?.endedBy ?? null,
      model.fromSeconds,
      model.toSeconds,
    ];
  });
  return {
    name: 'longest-run',
    columns: [
      { name: 'label', unit: 'none' },
      { name: 'engine-speed', unit: '1/s' },
      { name: 'exit', unit: '1' },
      { name: 'fan', unit: 'none' },
      { name: 'start', unit: 'K' },
      { name: 'air', unit: 'K' },
      { name: 'longest', unit: 's' },
      { name: 'ended-by', unit: 'none' },
      { name: 'longest-from-idle', unit: 's' },
      { name: 'hot-day-air', unit: 'K' },
      { name: 'longest-hot-day', unit: 's' },
      { name: 'ended-by-hot-day', unit: 'none' },
      { name: 'from-seconds', unit: 's' },
      { name: 'to-seconds', unit: 's' },
    ],
    rows,
  };
}

/**
 * What the next run of a condition should read, minute by minute, with its prediction band.
 * @param outlook of the condition, object
 * @param start temperature and air, K
 * @param seconds how far, s
 * @param quantity glossary name of the reading, text
 * @returns the table
 */
export function expectedTable(outlook: Outlook, start: Start, seconds: number, quantity: string): ResultTable {
  const minutes = Array.from({ length: Math.floor(seconds / MINUTE) + 1 }, (_, i) => i * MINUTE);
  const bands = outlook.expectedAt(start, minutes);
  return {
    name: 'next-run',
    columns: [
      { name: 'time', unit: 's' },
      { name: quantity, unit: 'K' },
      { name: `${quantity}-low`, unit: 'K' },
      { name: `${quantity}-high`, unit: 'K' },
    ],
    rows: bands.map(({ value, low, high }, i) => [minutes[i] ?? 0, value, low, high]),
  };
}

/**
 * One outlook a condition: of several runs the one that says most, resolved first, then the longest.
 * @param outlooks of all runs, list
 * @returns one each, in order of first appearance
 */
export function oneEach(outlooks: readonly Outlook[]): Outlook[] {
  const chosen: Outlook[] = [];
  const says = ({ model }: Outlook) => (model.resolved ? 1e9 : 0) + model.toSeconds - model.fromSeconds;
  for (const outlook of outlooks) {
    const at = chosen.findIndex(
      (one) => one.model.quantity === outlook.model.quantity && isSameCondition(one.model, outlook.model),
    );
    const known = chosen[at];
    if (!known) chosen.push(outlook);
    else if (says(outlook) > says(known)) chosen[at] = outlook;
  }
  return chosen;
}

/** How far a table of a measured run goes at most, s. */
const TABLE_SECONDS = toSi(30, 'min');

/**
 * What the next run of each condition should read, minute by minute, started as the measured one and in its air.
 * @param outlooks of the main temperature, list
 * @returns one table, conditions one after the other
 */
export function nextRunTable(outlooks: readonly Outlook[]): ResultTable {
  const rows = outlooks.flatMap((outlook) => {
    const { model } = outlook;
    const length = Math.min(TABLE_SECONDS, AHEAD * (model.toSeconds - model.fromSeconds));
    const start = { temperature: model.start, air: model.air ?? 0 };
    return expectedTable(outlook, start, length, 'temperature').rows.map((row) => [model.label, ...row]);
  });
  return {
    name: 'next-run',
    columns: [
      { name: 'label', unit: 'none' },
      { name: 'time', unit: 's' },
      { name: 'temperature', unit: 'K' },
      { name: 'temperature-low', unit: 'K' },
      { name: 'temperature-high', unit: 'K' },
    ],
    rows,
  };
}
