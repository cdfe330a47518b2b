/** A value as the file writes it, for the text of a flag. */
import { fromSi } from '../../units/index.ts';
import type { LogChannel } from '../table.ts';

/**
 * @param channel the channel, object
 * @param value as stored: SI where the unit is known
 * @returns number and unit as in the file, text
 */
export function shownValue(channel: LogChannel, value: number): string {
  if (channel.unit === null) return `${round(value)} (unit not known)`;
  const number = round(fromSi(value, channel.unit));
  return channel.unit === 'none' ? `${number}` : `${number} ${channel.unit}`;
}

function round(value: number): number {
  return Number(value.toPrecision(6));
}
