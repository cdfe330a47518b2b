/** The time of each row as its columns write it, before anything is mended: one number a row, NaN where missing. */
import { flag } from '../../remarks/index.ts';
import { isUnit, toSi, unitOf } from '../../units/index.ts';
import type { LogMap } from '../log-map.ts';
import { type ClockCell, fullYear, offsetIn, readClockCell } from './clock-cell.ts';
import { dateOrder } from './date-order.ts';
import type { TimeBuilt, TimeColumn } from './time-base.ts';
import { type TimeRole, timeRole, zoneIn } from './time-names.ts';

export interface Stamps {
  /** s: since local midnight of the first day, or elapsed */
  seconds: Float64Array;
  kind: 'clock' | 'elapsed';
  /** local clock at second 0, as if it were UTC, ms; null without a date */
  epochMs: number | null;
  /** minutes east of UTC; null when the file does not say */
  zoneMinutes: number | null;
  isUtc: boolean;
}

const DAY = 86_400;
const YEAR_2000 = 946_684_800;
const YEAR_2100 = 4_102_444_800;

/**
 * Times of the rows.
 * @param rows how many, count
 * @param columns those that speak of time
 * @param map what a person confirmed
 * @param built where used columns, flags, notes and questions go
 * @returns the stamps, or null when no column tells the time
 */
export function readStamps(
  rows: number,
  columns: readonly TimeColumn[],
  map: LogMap['time'] | undefined,
  built: TimeBuilt,
): Stamps | null {
  const named = map?.columns ? columns.filter((one) => map.columns?.includes(one.column)) : columns;
  const roles = named.map((column) => ({ column, role: roleOf(column) }));
  const find = (...wanted: (TimeRole | null)[]) => roles.find((one) => wanted.includes(one.role))?.column;
  const zone = zoneOf(find('offset'), named, map);
  const epoch = roles
    .map((one) => one.column)
    .find(
      (column) => epochScale(column) !== null && (timeRole(column.name) === 'epoch' || epochScale(column) !== null),
    );
  const clocks = roles.filter(({ column }) =>
    column.texts?.some((text) => text !== '' && readClockCell(text) !== null),
  );
  const hasTime = clocks.find(({ column }) => firstCell(column, (cell) => !Number.isNaN(cell.secondsOfDay)));
  const elapsed = find('elapsed');
  if (hasTime && timeRole(hasTime.column.name) !== 'elapsed')
    return clockStamps(
      rows,
      clocks.map((one) => one.column),
      zone,
      map,
      built,
    );
  if (epoch?.numbers) {
    const scale = epochScale(epoch) ?? 1;
    built.used.push(epoch.index);
    const first = epoch.numbers.find((value) => !Number.isNaN(value)) ?? 0;
    return {
      seconds: epoch.numbers.map((value) => (value - first) / scale),
      kind: 'clock',
      epochMs: (first / scale) * 1000,
      zoneMinutes: 0,
      isUtc: true,
    };
  }
  const splitUp = partsOfClock(rows, roles, zone, built);
  if (splitUp) return splitUp;
  if (hasTime) return elapsedTexts(hasTime.column, built);
  const counted = elapsed ?? find('time', 'second', 'date-time', 'gps-seconds', 'fraction') ?? find('counter');
  if (!counted?.numbers) return null;
  if (roleOf(counted) === 'counter' && !rises(counted.numbers)) return null;
  if (roleOf(counted) === 'counter') return null;
  built.used.push(counted.index);
  const factor = elapsedFactor(counted);
  return {
    seconds: counted.numbers.map((value) => value * factor),
    kind: 'elapsed',
    epochMs: null,
    zoneMinutes: null,
    isUtc: false,
  };
}

function roleOf(column: TimeColumn): TimeRole | null {
  return timeRole(column.name);
}

const rises = (values: Float64Array) => values.every((value, i) => i === 0 || value >= (values[i - 1] ?? 0));

function firstCell(column: TimeColumn, holds: (cell: ClockCell) => boolean): boolean {
  const text = column.texts?.find((one) => one !== '' && readClockCell(one) !== null);
  const cell = text === undefined ? null : readClockCell(text);
  return cell !== null && holds(cell);
}

/** How many of its units make a second, where the numbers are seconds, milliseconds or microseconds since 1970. */
function epochScale(column: TimeColumn): number | null {
  const first = column.numbers?.find((value) => !Number.isNaN(value));
  if (first === undefined) return null;
  for (const scale of [1, 1e3, 1e6, 1e9]) {
    const seconds = first / scale;
    if (seconds > YEAR_2000 && seconds < YEAR_2100) return scale;
  }
  return null;
}

interface Zone {
  minutes: number | null;
  isUtc: boolean;
  used: number[];
}

function zoneOf(offset: TimeColumn | undefined, columns: readonly TimeColumn[], map: LogMap['time'] | undefined): Zone {
  if (map?.offset) return { minutes: offsetIn(map.offset), isUtc: /^(Z|UTC)$/.test(map.offset), used: [] };
  const cell = offset?.texts?.find((text) => text !== '') ?? offset?.numbers?.find((value) => !Number.isNaN(value));
  if (offset && cell !== undefined) {
    const minutes = typeof cell === 'number' ? cell * 60 : offsetIn(cell);
    if (!Number.isNaN(minutes))
      return { minutes, isUtc: typeof cell === 'string' && /^(Z|UTC|GMT)$/i.test(cell), used: [offset.index] };
  }
  const told = columns.map((one) => zoneIn(`${one.name} ${one.unitText}`)).find((one) => one !== null);
  return told === 'UTC' ? { minutes: 0, isUtc: true, used: [] } : { minutes: null, isUtc: false, used: [] };
}

function clockStamps(
  rows: number,
  columns: readonly TimeColumn[],
  zone: Zone,
  map: LogMap['time'] | undefined,
  built: TimeBuilt,
): Stamps {
  const withTime = columns.filter((one) => firstCell(one, (cell) => !Number.isNaN(cell.secondsOfDay)));
  const both = withTime.find((one) => firstCell(one, (cell) => !Number.isNaN(cell.a)));
  const timeColumn = both ?? withTime.find((one) => zoneIn(`${one.name} ${one.unitText}`) === 'UTC') ?? withTime[0];
  const dateColumn =
    both ?? columns.find((one) => firstCell(one, (cell) => !Number.isNaN(cell.a) && Number.isNaN(cell.secondsOfDay)));
  const texts = timeColumn?.texts ?? [];
  const cells = cachedCells();
  const day = new Float64Array(rows).fill(Number.NaN);
  const seconds = new Float64Array(rows).fill(Number.NaN);
  const order = dateColumn ? dateOrder(dateColumn, map, built) : null;
  let minutes = zone.minutes;
  let isUtc = zone.isUtc;
  const fixedDay = map?.date ? Date.parse(`${map.date}T00:00:00Z`) / (DAY * 1000) : null;
  for (let i = 0; i < rows; i++) {
    const cell = cells(texts[i] ?? '');
    if (!cell || Number.isNaN(cell.secondsOfDay)) continue;
    seconds[i] = cell.secondsOfDay;
    if (!Number.isNaN(cell.offsetMinutes) && !map?.offset) {
      minutes = cell.offsetMinutes;
      isUtc = /[Zz]|UTC|GMT/.test(texts[i] ?? '');
    }
    const dated = dateColumn === timeColumn ? cell : dateColumn ? cells(dateColumn.texts?.[i] ?? '') : null;
    if (dated && order && !Number.isNaN(dated.a)) day[i] = dayOf(dated, order);
  }
  if (timeColumn) built.used.push(timeColumn.index);
  if (dateColumn && dateColumn !== timeColumn) built.used.push(dateColumn.index);
  built.used.push(...zone.used, ...withTime.filter((one) => one !== timeColumn).map((one) => one.index));
  const firstDay = day.find((value) => !Number.isNaN(value)) ?? fixedDay ?? null;
  joinDays(seconds, day, firstDay, dateColumn !== undefined, built);
  return {
    seconds,
    kind: 'clock',
    epochMs: firstDay === null ? null : firstDay * DAY * 1000,
    zoneMinutes: minutes,
    isUtc,
  };
}

// Seconds since midnight of the first day; without dates a fall by half a day or more is midnight.
function joinDays(
  seconds: Float64Array,
  day: Float64Array,
  firstDay: number | null,
  dated: boolean,
  built: TimeBuilt,
): void {
  let added = 0;
  let lastOfDay = Number.NaN;
  for (let i = 0; i < seconds.length; i++) {
    const now = seconds[i] ?? Number.NaN;
    if (Number.isNaN(now)) continue;
    const today = day[i] ?? Number.NaN;
    if (dated && firstDay !== null) {
      if (!Number.isNaN(today)) {
        const days = (today - firstDay) * DAY;
        if (days === added + DAY && now < lastOfDay) built.flags.push(flag('midnight', 'the clock passed midnight'));
        added = days;
      }
    } else if (now < lastOfDay - DAY / 2) {
      added += DAY;
      built.flags.push(flag('midnight', 'the clock passed midnight'));
    }
    lastOfDay = now;
    seconds[i] = now + added;
  }
}

function dayOf(cell: ClockCell, order: 'ymd' | 'mdy' | 'dmy'): number {
  const [year, month, date] =
    order === 'ymd' ? [cell.a, cell.b, cell.c] : order === 'mdy' ? [cell.c, cell.a, cell.b] : [cell.c, cell.b, cell.a];
  return Date.UTC(fullYear(year), month - 1, date) / (DAY * 1000);
}

function cachedCells(): (text: string) => ClockCell | null {
  const known = new Map<string, ClockCell | null>();
  return (text) => {
    if (text === '') return null;
    let cell = known.get(text);
    if (cell === undefined) {
      cell = readClockCell(text);
      if (known.size < 50_000) known.set(text, cell);
    }
    return cell;
  };
}

function elapsedTexts(column: TimeColumn, built: TimeBuilt): Stamps {
  built.used.push(column.index);
  const cells = cachedCells();
  const seconds = Float64Array.from(column.texts ?? [], (text) => cells(text)?.secondsOfDay ?? Number.NaN);
  return { seconds, kind: 'elapsed', epochMs: null, zoneMinutes: null, isUtc: false };
}

function elapsedFactor(column: TimeColumn): number {
  const unit = column.unitText.trim();
  const known: Readonly<Record<string, string>> = {
    s: 's',
    sec: 's',
    secs: 's',
    seconds: 's',
    ms: 'ms',
    msec: 'ms',
    milliseconds: 'ms',
    us: 'us',
    min: 'min',
    mins: 'min',
    minutes: 'min',
    h: 'h',
    hr: 'h',
    hours: 'h',
  };
  const id = known[unit.toLowerCase()] ?? (isUnit(unit) && unitOf(unit).dimension === 'time' ? unit : null);
  if (id) return toSi(1, id);
  return /\b(ms|msec|millis|milliseconds?)\b/i.test(column.name.replace(/_/g, ' '))
    ? toSi(1, 'ms')
    : /\bmin(ute)?s?\b/i.test(column.name)
      ? toSi(1, 'min')
      : 1;
}

// Year, month, day, hour, minute, second each in a column of its own.
function partsOfClock(
  rows: number,
  roles: readonly { column: TimeColumn; role: TimeRole | null }[],
  zone: Zone,
  built: TimeBuilt,
): Stamps | null {
  const of = (role: TimeRole) => roles.find((one) => one.role === role)?.column;
  const [hour, minute, second] = [of('hour'), of('minute'), of('second')];
  if (!hour?.numbers || !minute?.numbers || !second?.numbers) return null;
  const [year, month, day] = [of('year'), of('month'), of('day')];
  const at = (column: TimeColumn | undefined, i: number) => column?.numbers?.[i] ?? Number.NaN;
  const seconds = new Float64Array(rows);
  const days = new Float64Array(rows).fill(Number.NaN);
  for (let i = 0; i < rows; i++) {
    seconds[i] = at(hour, i) * 3600 + at(minute, i) * 60 + at(second, i);
    if (year && month && day) days[i] = Date.UTC(fullYear(at(year, i)), at(month, i) - 1, at(day, i)) / (DAY * 1000);
  }
  built.used.push(...[hour, minute, second, year, month, day].flatMap((one) => (one ? [one.index] : [])));
  const firstDay = days.find((value) => !Number.isNaN(value)) ?? null;
  joinDays(seconds, days, firstDay, firstDay !== null, built);
  return {
    seconds,
    kind: 'clock',
    epochMs: firstDay === null ? null : firstDay * DAY * 1000,
    zoneMinutes: zone.minutes,
    isUtc: zone.isUtc,
  };
}
