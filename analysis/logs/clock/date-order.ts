/** Which number of a date is the day: told by the date itself, by the days moving on, by a person, or asked. */
import { flag } from '../../remarks/index.ts';
import type { LogMap } from '../log-map.ts';
import { readClockCell } from './clock-cell.ts';
import type { TimeBuilt, TimeColumn } from './time-base.ts';

export type DateOrder = 'ymd' | 'mdy' | 'dmy';

/**
 * The order of a date column's numbers.
 * @param column the column with dates
 * @param map what a person confirmed
 * @param built where the question goes
 * @returns the order; month first while it is open, which changes no duration
 */
export function dateOrder(column: TimeColumn, map: LogMap['time'] | undefined, built: TimeBuilt): DateOrder {
  const distinct = new Map<string, [number, number, number]>();
  let separator = '';
  for (const text of column.texts ?? []) {
    const date = text.slice(0, 11);
    if (text === '' || distinct.has(date) || distinct.size > 400) continue;
    const cell = readClockCell(text);
    if (!cell || Number.isNaN(cell.a)) continue;
    distinct.set(date, [cell.a, cell.b, cell.c]);
    separator ||= /\d([-/.])\d/.exec(date)?.[1] ?? '';
  }
  const dates = [...distinct.values()];
  if (dates.some(([a]) => a > 31)) return 'ymd';
  if (map?.dayFirst !== undefined) return map.dayFirst ? 'dmy' : 'mdy';
  const format = `${column.unitText} ${map?.format ?? ''}`.toLowerCase();
  if (/d{1,2}\W?m{1,2}\W?y/.test(format)) return 'dmy';
  if (/m{1,2}\W?d{1,2}\W?y/.test(format)) return 'mdy';
  if (dates.some(([a]) => a > 12)) return 'dmy';
  if (dates.some(([, b]) => b > 12)) return 'mdy';
  // Two dates next to each other in the file differ by a day, not by a month.
  const [first, second] = dates;
  if (first && second && dates.length <= 3) {
    if (first[0] === second[0] && Math.abs(second[1] - first[1]) === 1) return 'mdy';
    if (first[1] === second[1] && Math.abs(second[0] - first[0]) === 1) return 'dmy';
  }
  if (dates.every(([a, b]) => a === b)) return 'mdy';
  if (separator === '.') return 'dmy';
  built.flags.push(
    flag('date-ambiguous', `day and month of "${[...distinct.keys()][0]?.trim()}" cannot be told apart`),
  );
  built.questions.push({
    id: 'date-order',
    question: 'Which comes first in the date, the day or the month?',
    choices: ['day first', 'month first'],
    because: 'no date in the file has a number above twelve in either place',
    column: column.column,
    concerns: ['date'],
  });
  return 'mdy';
}
