/** Date, time, half day, fraction and zone, from one column or several, as one wall clock. */
import { flag } from '../../remarks/index.ts';
import type { LogMap } from '../log-map.ts';
import { offsetIn, packDate } from './clock-cell.ts';
import { dateOrder, dayNumber } from './date-order.ts';
import type { DateFigures } from './packed-clock.ts';
import { DAY_SECONDS, type RawClock, rawClock, type TimeColumn } from './raw-clock.ts';
import type { Stamps } from './read-stamps.ts';
import { zoneIn } from './time-names.ts';

export interface WallParts {
  /** packed dates, one a row, or null */
  dates: Float64Array | null;
  /** seconds of the day, one a row; they become those of the clock */
  seconds: Float64Array;
  /** offsets written in the cells, minutes, or null */
  offsets: Float64Array | null;
  /** columns of date and time */
  columns: TimeColumn[];
  /** a column that tells the offset */
  offsetColumn: TimeColumn | null;
  /** orders in which the six figures of a packed date may be, where nothing tells which */
  dateOpen?: readonly DateFigures[];
}

/**
 * Join the parts.
 * @param parts what the columns hold
 * @param map what a person confirmed
 * @returns the clock, with its questions and remarks
 */
export function wallClock(parts: WallParts, map: LogMap['time']): RawClock {
  const names = parts.columns.map((column) => `"${column.column}"`).join(' and ');
  const days = daysOf(parts, map);
  const used = parts.columns.map((column) => column.index);
  const raw = parts.seconds;
  if (days) addDays(raw, parts.dates, days.dayOf);
  const clock = rawClock(
    days ? 'absolute' : 'day',
    raw,
    used,
    `${names} read as ${days ? 'date and time' : 'time of day'}`,
  );
  if (days) clock.notes.push(...days.notes);
  else clock.flags.push(flag('no-date', 'the file has a time of day but no date'));
  const figures = parts.dateOpen ?? [];
  if (days?.open || figures.length > 1) {
    clock.flags.push(flag('date-ambiguous', 'day and month cannot be told apart; relative times do not depend on it'));
    clock.questions.push({
      id: 'date-order',
      question: 'Which comes first in the dates of this file?',
      choices: figures.length > 1 ? figures.map((order) => FIRST[order]) : ['day first', 'month first'],
      because:
        figures.length > 1
          ? 'the six figures of the date make a day in more than one order'
          : 'no number is above twelve, and the dates follow each other either way',
      ...(parts.columns[0] ? { column: parts.columns[0].column } : {}),
      concerns: ['date'],
    });
  }
  applyZone(clock, parts, map);
  return clock;
}

const FIRST: Readonly<Record<DateFigures, string>> = { dmy: 'day first', mdy: 'month first', ymd: 'year first' };

function daysOf(parts: WallParts, map: LogMap['time']) {
  if (!parts.dates) {
    if (!map?.date) return null;
    const [year = 0, month = 0, day = 0] = map.date.split('-').map(Number);
    const first = dayNumber(packDate(year, month, day), true);
    if (Number.isNaN(first)) return null;
    return {
      dayOf: () => first,
      open: false,
      notes: [`the date ${map.date} is from the map`],
    };
  }
  const different = new Set<number>();
  let before = Number.NaN;
  // Counted: a long log has millions of rows, and nearly all have the date of the row above.
  for (let i = 0; i < parts.dates.length; i += 1) {
    const packed = parts.dates[i] ?? Number.NaN;
    if (packed === before || Number.isNaN(packed)) continue;
    different.add(packed);
    before = packed;
  }
  const order = dateOrder([...different], map?.dayFirst ?? toldOrder(parts.columns, map?.format));
  const known = new Map([...different].map((packed) => [packed, dayNumber(packed, order.dayFirst)]));
  const dayOf = (packed: number) => known.get(packed) ?? Number.NaN;
  return { dayOf, open: order.open, notes: [`order of the date: ${order.why}`] };
}

/** Most rows have the date of the row above. */
function addDays(raw: Float64Array, dates: Float64Array | null, dayOf: (packed: number) => number): void {
  let before = Number.NaN;
  let day = dayOf(before);
  for (let i = 0; i < raw.length; i += 1) {
    const packed = dates?.[i] ?? Number.NaN;
    if (packed !== before) day = dayOf(packed);
    before = packed;
    raw[i] = day * DAY_SECONDS + (raw[i] ?? 0);
  }
}

function toldOrder(columns: readonly TimeColumn[], format: string | undefined): boolean | undefined {
  for (const text of [format ?? '', ...columns.map((column) => `${column.name} ${column.unitText}`)]) {
    if (/\bd{1,2}[-/. ]?m{1,3}[-/. ]?y/i.test(text)) return true;
    if (/\bm{1,3}[-/. ]?d{1,2}[-/. ]?y/i.test(text)) return false;
  }
  // Dots between the numbers are written where the day comes first (common practice, no source).
  const isDotted = (text: string) => /^\d{1,2}\.\d{1,2}\.\d{2,4}/.test(text);
  const dotted = columns.some((c) => isDotted(c.example ?? '') || c.texts?.some(isDotted));
  return dotted ? true : undefined;
}

function applyZone(clock: RawClock, parts: WallParts, map: LogMap['time']): void {
  const named = parts.columns.map((column) => zoneIn(`${column.name} ${column.unitText}`));
  let offsets: Float64Array | null = null;
  if (map?.offset !== undefined) {
    clock.offsetMinutes = offsetIn(map.offset);
    clock.notes.push(`the offset ${map.offset} is from the map`);
  } else if (parts.offsets) offsets = parts.offsets;
  else if (named.includes('UTC') && !named.includes('local')) clock.offsetMinutes = 0;
  else if (parts.offsetColumn) {
    offsets = offsetsOf(parts.offsetColumn);
    clock.used.push(parts.offsetColumn.index);
  }
  if (offsets) {
    clock.offsetMinutes = commonest(offsets);
    if (Number.isNaN(clock.offsetMinutes)) offsets = null;
  }
  if (Number.isNaN(clock.offsetMinutes)) {
    clock.flags.push(flag('zone-unknown', 'the file does not say in which zone its clock runs'));
    return;
  }
  if (!offsets && clock.offsetMinutes === 0) return;
  for (let i = 0; i < clock.raw.length; i += 1) {
    const own = offsets?.[i] ?? Number.NaN;
    clock.raw[i] = (clock.raw[i] ?? 0) - (Number.isNaN(own) ? clock.offsetMinutes : own) * 60;
  }
}

function offsetsOf(column: TimeColumn): Float64Array {
  if (column.texts) {
    const seen = new Map<string, number>();
    return Float64Array.from(column.texts, (text) => {
      let minutes = seen.get(text);
      if (minutes === undefined) {
        minutes = offsetIn(text);
        seen.set(text, minutes);
      }
      return minutes;
    });
  }
  // Hours up to fourteen east; anything larger is minutes.
  const numbers = column.numbers ?? new Float64Array(0);
  const inMinutes = numbers.some((value) => Math.abs(value) > 15) || /min/i.test(column.unitText);
  return numbers.map((value) => (inMinutes ? value : value * 60));
}

function commonest(values: Float64Array): number {
  const counts = new Map<number, number>();
  let best = Number.NaN;
  for (const value of values) if (!Number.isNaN(value)) counts.set(value, (counts.get(value) ?? 0) + 1);
  for (const [value, count] of counts) if (Number.isNaN(best) || count > (counts.get(best) ?? 0)) best = value;
  return best;
}

/**
 * The offsets of cells, where any says one.
 * @param stamps what the cells hold
 * @returns minutes, one a row, or null
 */
export function writtenOffsets(stamps: Stamps): Float64Array | null {
  return stamps.offsets?.some((minutes) => !Number.isNaN(minutes)) ? stamps.offsets : null;
}
