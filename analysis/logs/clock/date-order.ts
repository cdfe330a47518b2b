/** Which number of a date is the month: told by the dates themselves, by a person, or left open. */
import { fullYear, unpackDate } from './clock-cell.ts';

export interface DateOrder {
  dayFirst: boolean;
  /** neither the dates nor a person tell */
  open: boolean;
  why: string;
}

/**
 * Days since 1970 of a date.
 * @param packed from packDate
 * @param dayFirst whether the day stands before the month, where the year stands last
 * @returns days, or NaN where there is no such date
 */
export function dayNumber(packed: number, dayFirst: boolean): number {
  const [a, b, c] = unpackDate(packed);
  const yearFirst = a > 31;
  const year = fullYear(yearFirst ? a : c);
  const month = yearFirst ? b : dayFirst ? b : a;
  const day = yearFirst ? c : dayFirst ? a : b;
  if (!(month >= 1 && month <= 12 && day >= 1)) return Number.NaN;
  const ms = Date.UTC(year, month - 1, day);
  return new Date(ms).getUTCDate() === day ? ms / 86_400_000 : Number.NaN;
}

/**
 * Decide the order.
 * @param dates the different dates in the order of the file, from packDate
 * @param told what the map or the header says, or undefined
 * @returns the order, and whether it stays open
 */
export function dateOrder(dates: readonly number[], told: boolean | undefined): DateOrder {
  if (told !== undefined) return { dayFirst: told, open: false, why: 'as the map or the header says' };
  const open = dates.map(unpackDate).filter(([a]) => a <= 31);
  if (open.length === 0) return { dayFirst: true, open: false, why: 'year first or the month is a word' };
  // One garbled cell must not decide: the side with more evidence wins.
  const first = open.filter(([a]) => a > 12).length;
  const second = open.filter(([, b]) => b > 12).length;
  if (first !== second) return { dayFirst: first > second, open: false, why: 'a number is above twelve' };
  if (open.every(([a, b]) => a === b)) return { dayFirst: true, open: false, why: 'day and month are the same number' };
  const asDay = wander(dates, true);
  const asMonth = wander(dates, false);
  if (asDay <= 7 && asMonth >= 27) return { dayFirst: true, open: false, why: 'so the days follow each other' };
  if (asMonth <= 7 && asDay >= 27) return { dayFirst: false, open: false, why: 'so the days follow each other' };
  return { dayFirst: true, open: true, why: 'no number is above twelve' };
}

/** Days walked from date to date; steps of most of a year are a clock being set and say nothing. */
function wander(dates: readonly number[], dayFirst: boolean): number {
  let sum = 0;
  let before = Number.NaN;
  for (const packed of dates) {
    const day = dayNumber(packed, dayFirst);
    const step = Math.abs(day - before);
    if (step < 334) sum += step;
    before = day;
  }
  return sum;
}
