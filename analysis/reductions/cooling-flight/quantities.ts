/** The values a result is known by: exponents, and the least margin of each temperature. */
import { type Flag, flag } from '../../remarks/index.ts';
import type { Condition, ResultQuantity } from '../../results/index.ts';
import type { ChannelAnswer } from './channel-fit.ts';
import type { Margin } from './margins.ts';
import { channelWords, type SteadyReading } from './point.ts';
import type { Exponent } from './tables.ts';

/** `fuel-flow-exponent`, one a temperature. */
export function exponentQuantities(exponents: readonly Exponent[]): ResultQuantity[] {
  return exponents.map(({ quantity, name, value, doubt }) => ({
    name: `${name}-exponent`,
    value,
    unit: '1',
    u95: doubt.u95,
    parts: doubt.parts,
    conditions: { label: channelWords(quantity), channel: quantity },
    flags: [],
  }));
}

/**
 * The least margin of each temperature over its points.
 * @param answers one a temperature, list
 * @param margins of the points, list
 * @returns `hot-day-margin`, null with the reason where nothing was fully open or there is no limit
 */
export function leastMargins(answers: readonly ChannelAnswer[], margins: readonly Margin[]): ResultQuantity[] {
  return answers.map(({ quantity, readings }) => {
    const own = margins.filter((one) => one.quantity === quantity && one.reading !== null);
    const [least] = own
      .filter((one) => one.margin !== null)
      .sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0) || a.label.localeCompare(b.label));
    const base = { name: 'hot-day-margin', unit: 'dK' };
    if (!least?.doubt || least.margin === null) {
      return {
        ...base,
        value: null,
        u95: null,
        parts: {},
        conditions: { label: channelWords(quantity) },
        flags: [whyNot(quantity, readings, own)],
      };
    }
    const { margin, doubt, reading, toCome } = least;
    return {
      ...base,
      value: margin,
      u95: doubt.u95,
      // what may still come can only make it smaller
      interval: [margin - doubt.u95 - toCome, margin + doubt.u95],
      parts: doubt.parts,
      conditions: { ...conditionsOf(least, reading), label: `${channelWords(quantity)}, ${least.label}` },
      flags: least.flags,
    };
  });
}

function whyNot(quantity: string, readings: readonly SteadyReading[], own: readonly Margin[]): Flag {
  if (own.some((one) => one.corrected !== null))
    return flag(
      'limit-missing',
      `${channelWords(quantity)}: the description has no limit, so there is no margin. Enter it with its source on the Airplane page`,
    );
  if (readings.some(({ regime }) => regime === 'unknown'))
    return flag('regime-unknown', `${channelWords(quantity)}: whether a thermostat regulated is not known`);
  const shut = readings.flatMap(({ thermostatLeft }) => (thermostatLeft === null ? [] : [thermostatLeft]));
  const doors = readings.flatMap(({ setting }) => (setting.door === null ? [] : [1 - setting.door]));
  const share = (list: readonly number[]) => `${Math.round(100 * Math.min(...list))} %`;
  const hand = [
    ...(shut.length > 0 ? [`${share(shut)} of the thermostat’s range`] : []),
    ...(doors.length > 0 ? [`${share(doors)} of the door’s travel`] : []),
  ].join(' and ');
  return flag(
    'regulated',
    `${channelWords(quantity)}: something regulated at every point, so temperature says nothing of margin; still in hand at the least: ${hand || 'not known'}`,
  );
}

function conditionsOf({ air, hotAir }: Margin, reading: SteadyReading | null): Record<string, Condition> {
  const { setting } = reading ?? {};
  const of = (name: string, value: number | null | undefined, unit: string): Record<string, Condition> =>
    value === null || value === undefined ? {} : { [name]: { value, unit } };
  return {
    ...(setting?.measure === 'fuel-flow' ? of('fuel-flow', setting.power, 'm3/s') : {}),
    ...of('indicated-airspeed', setting?.ias, 'm/s'),
    ...of('cowl-exit-position', setting?.door, '1'),
    ...of('pressure-altitude', setting?.height, 'm'),
    ...of('outside-air-temperature', air, 'K'),
    ...of('hot-day-air', hotAir, 'K'),
    ...(reading && !reading.written
      ? {
          file: reading.file,
          ...of('from-seconds', reading.fromSeconds, 's'),
          ...of('to-seconds', reading.toSeconds, 's'),
        }
      : {}),
  };
}
