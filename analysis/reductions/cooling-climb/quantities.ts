/** The quantities of a cooling climb: margins on the hot day first, the least on top, then the peaks themselves. */
import { type Flag, flag } from '../../remarks/index.ts';
import type { ResultQuantity } from '../../results/index.ts';
import { type Answer, nameOf, spanOf } from './answer.ts';
import type { Corrected } from './corrected.ts';
import { leastMarginOf, marginOf, overAirOf, recirculationOf } from './tables.ts';

/** How a quantity holds: where, when, in what air, with what set. */
function conditionsOf(one: Answer, at: number): ResultQuantity['conditions'] {
  const { way, quantity } = one.course;
  const span = spanOf(one);
  const number = (value: number | null | undefined, unit: string) =>
    value === null || value === undefined || !Number.isFinite(value) ? null : { value, unit };
  const inlet = number(way.inlet?.[at], 'K');
  const set = Object.entries(SETTING_UNITS).flatMap(([name, unit]) => {
    const value = number(one.settings[name], unit);
    return value ? [[name, value] as const] : [];
  });
  return {
    channel: quantity,
    climb: way.label,
    file: way.file,
    'from-seconds': { value: span.fromSeconds, unit: 's' },
    'to-seconds': { value: span.toSeconds, unit: 's' },
    'at-seconds': { value: way.t[at] ?? 0, unit: 's' },
    'pressure-altitude': { value: way.height[at] ?? 0, unit: 'm' },
    'outside-air-temperature': { value: way.air[at] ?? 0, unit: 'K' },
    ...(inlet ? { 'inlet-air-temperature': inlet } : {}),
    ...Object.fromEntries(set),
  };
}

const SETTING_UNITS: Readonly<Record<string, string>> = {
  'engine-speed': '1/s',
  'manifold-pressure': 'Pa',
  'fuel-flow': 'm3/s',
  'indicated-airspeed': 'm/s',
  'cowl-exit-position': '1',
  'cooling-fan-state': 'none',
  'flap-position': 'rad',
};

/**
 * All quantities of the answers.
 * @param answers of all climbs, list
 * @param words of the hot day, text
 * @returns margins, the least first, then peaks; null with a flag where something is withheld
 */
export function quantitiesOf(answers: readonly Answer[], words: string): ResultQuantity[] {
  const least = answers.map((one) =>
    marginQuantity('least-hot-day-margin', one, one.hottest, leastMarginOf(one), words),
  );
  const atPeak = answers.map((one) => marginQuantity('hot-day-margin', one, one.corrected, marginOf(one), words));
  return [...leastFirst(least), ...leastFirst(atPeak), ...answers.flatMap((one) => peakQuantities(one, words))];
}

const reach = (value: number, u95: number, below: number, above: number): [number, number] => [
  value - u95 - below,
  value + u95 + above,
];

function leastFirst(list: readonly ResultQuantity[]): ResultQuantity[] {
  const order = (one: ResultQuantity) => one.value ?? Number.POSITIVE_INFINITY;
  return list.toSorted((a, b) => (order(a) === order(b) ? 0 : order(a) - order(b)));
}

function marginQuantity(
  name: string,
  one: Answer,
  corrected: Corrected | null,
  margin: number | null,
  words: string,
): ResultQuantity {
  const at = corrected?.at ?? one.peak.at;
  const given = margin !== null && corrected !== null;
  return {
    name,
    unit: 'dK',
    value: given ? margin : null,
    u95: given ? corrected.doubt.u95 : null,
    ...(given
      ? { interval: reach(margin, corrected.doubt.u95, corrected.powerAllowance, corrected.startAllowance) }
      : {}),
    parts: given ? corrected.doubt.parts : {},
    conditions: {
      ...conditionsOf(one, at),
      ...(corrected ? { 'hot-day-air': { value: corrected.hotAir, unit: 'K' } } : {}),
      reference: words,
    },
    flags: given
      ? [...one.flags, ...stillShrinking(one, corrected), ...heldStart(one, corrected), ...heldPower(one, corrected)]
      : whyNot(one),
  };
}

function whyNot(one: Answer): Flag[] {
  if (one.flags.some(({ kind }) => WITHHOLDS.has(kind))) return one.flags;
  return [flag('limit-missing', `${nameOf(one)}: no limit to compare with`, spanOf(one)), ...one.flags];
}

const WITHHOLDS = new Set(['not-peaked', 'regulated', 'not-resolved', 'regime-unknown']);
/** Least within so long of the end of the climb counts as still shrinking, s. */
const END_SECONDS = 15;

// The reading has peaked and the corrected trace has not: the air of the day cools faster with height than the hot day's.
function stillShrinking(one: Answer, { at }: Corrected): Flag[] {
  const { t } = one.course.way;
  const last = t[t.length - 1] ?? 0;
  if (at === one.peak.at || last - (t[at] ?? 0) > END_SECONDS) return [];
  return [
    flag(
      'bound-only',
      `${nameOf(one)}: on the hot day it was still rising when the climb ended; higher up the margin is less than this`,
      spanOf(one),
    ),
  ];
}

/** An allowance smaller than this is not worth a remark, K. */
const WORTH = 0.5;

function heldStart(one: Answer, { startAllowance }: Corrected): Flag[] {
  if (startAllowance < WORTH) return [];
  return [
    flag(
      'method-note',
      `${nameOf(one)}: the climb began with the thermostat regulating, and so it would on the hot day, at the same temperature. One to one may therefore be up to ${startAllowance.toFixed(1)} K too much; the value is by the rule, the interval reaches that much further to the favourable side`,
      spanOf(one),
    ),
  ];
}

function heldPower(one: Answer, { powerAllowance }: Corrected): Flag[] {
  if (powerAllowance < WORTH) return [];
  return [
    flag(
      'method-note',
      `${nameOf(one)}: the log does not show that power fell with the air (manifold pressure going down as the air’s does). An engine that keeps its power runs hotter over thinner air: up to ${powerAllowance.toFixed(1)} K more than one to one, which the interval holds and “shown” must leave room for`,
      spanOf(one),
    ),
  ];
}

function peakQuantities(one: Answer, words: string): ResultQuantity[] {
  const conditions = conditionsOf(one, one.peak.at);
  const { reading, corrected, peak, ahead } = one;
  const over = overAirOf(one);
  const recirculation = recirculationOf(one);
  const list: ResultQuantity[] = [
    {
      name: 'peak-temperature',
      symbol: 'T_peak',
      unit: 'K',
      value: reading ? peak.highest : null,
      u95: reading?.u95 ?? null,
      ...(reading ? {} : { interval: [peak.highest, null] as [number, null] }),
      parts: reading?.parts ?? {},
      conditions: {
        ...conditions,
        ...(over === null ? {} : { 'over-air': { value: over, unit: 'dK' } }),
        ...(recirculation === null ? {} : { recirculation: { value: recirculation, unit: 'dK' } }),
      },
      flags: reading ? [] : one.flags,
    },
    {
      name: 'corrected-peak-temperature',
      symbol: 'T_corr',
      unit: 'K',
      value: corrected?.value ?? null,
      u95: corrected?.doubt.u95 ?? null,
      ...(corrected
        ? { interval: reach(corrected.value, corrected.doubt.u95, corrected.startAllowance, corrected.powerAllowance) }
        : {}),
      parts: corrected?.doubt.parts ?? {},
      conditions: {
        ...conditions,
        ...(corrected
          ? {
              'hot-day-air': { value: corrected.hotAir, unit: 'K' },
              correction: { value: corrected.correction, unit: 'dK' },
            }
          : {}),
        reference: words,
      },
      flags: one.flags,
    },
  ];
  if (!ahead || one.regime === 'regulated') return list;
  const top = ahead.expected.reduce((best, value, i) => (value > (ahead.expected[best] ?? 0) ? i : best), 0);
  const high = Math.max(...ahead.high);
  const value = ahead.expected[top] ?? peak.highest;
  list.push({
    name: 'temperature-ahead',
    unit: 'K',
    value,
    u95: high - value,
    interval: [ahead.low[top] ?? null, high],
    parts: {},
    conditions: { ...conditions, horizon: { value: ahead.seconds.at(-1) ?? 0, unit: 's' } },
    flags: [
      flag(
        'slow-node',
        `${nameOf(one)}: highest of the next half of the climb, as this climb would read; its high end holds ${ahead.allowance.toFixed(1)} K for what warms slowly. Power that falls with height is not in it`,
        spanOf(one),
      ),
    ],
  });
  return list;
}
