/** Whether a text names a column of a log. */
import { timeRole } from '../clock/time-names.ts';
import { splitHeader } from './header-text.ts';
import { matchName } from './match-name.ts';
import { readUnitText } from './unit-text.ts';

/**
 * True where a text is known as the name of a time or of a quantity.
 * @param text a header cell, text
 * @returns whether it is known
 */
export function isColumnName(text: string): boolean {
  const { name, unitText } = splitHeader(text);
  return timeRole(name) !== null || matchName(name, readUnitText(unitText)).quantities.length > 0;
}
