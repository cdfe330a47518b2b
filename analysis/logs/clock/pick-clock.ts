/** Of all columns that speak of time, the ones to go by: the one that says most, the zone-certain one first. */
import type { LogMap } from '../log-map.ts';
import { packDate } from './clock-cell.ts';
import { dayShare, elapsedClock, epochClock, satelliteWeekClock, serialDayClock } from './number-clock.ts';
import { type DateFigures, figuresIn, packedDates, packedTimes } from './packed-clock.ts';
import { type RawClock, rawClock, type TimeColumn } from './raw-clock.ts';
import { readStamps, type Stamps } from './read-stamps.ts';
import { type TimeRole, timeRole, zoneIn } from './time-names.ts';
import { wallClock, writtenOffsets } from './wall-clock.ts';

interface Candidate {
  column: TimeColumn;
  role: TimeRole | null;
  stamps: Stamps | null;
}

/**
 * The file's clock.
 * @param columns all columns that may tell time
 * @param map what a person confirmed
 * @returns the clock, or null where no column tells the time
 */
export function pickClock(columns: readonly TimeColumn[], map: LogMap['time']): RawClock | null {
  const chosen = map?.columns?.length ? columns.filter((one) => map.columns?.includes(one.column)) : columns;
  const all = chosen.map((column): Candidate => {
    const role = timeRole(column.name);
    const clock = column.texts && role !== 'offset' && role !== 'half-day';
    const stamps = column.stamps ?? (clock && column.texts ? readStamps(column.texts) : null);
    return { column, role, stamps };
  });
  const offsetColumn = [...all, ...columns.map((column) => ({ column, role: timeRole(column.name) }))].find(
    (one) => one.role === 'offset',
  )?.column;
  return (
    epochOf(all, map) ??
    calendarOf(all, offsetColumn ?? null, map) ??
    partsOf(all, offsetColumn ?? null, map) ??
    elapsedOf(all, map)
  );
}

const of = (all: readonly Candidate[], ...roles: TimeRole[]) =>
  all.filter((one) => one.role !== null && roles.includes(one.role));

function epochOf(all: readonly Candidate[], map: LogMap['time']): RawClock | null {
  for (const one of of(all, 'epoch', 'date-time', 'time', 'elapsed')) {
    const clock = epochClock(one.column) ?? serialDayClock(one.column, map?.offset);
    if (clock) return clock;
  }
  const [week] = of(all, 'gps-week');
  const [seconds] = of(all, 'gps-seconds');
  return week && seconds ? satelliteWeekClock(week.column, seconds.column) : null;
}

function calendarOf(all: readonly Candidate[], offsetColumn: TimeColumn | null, map: LogMap['time']): RawClock | null {
  // Beside an offset column the local clock is meant; else UTC is worth more.
  const zoneWorth = ({ column }: Candidate) => {
    const zone = zoneIn(`${column.name} ${column.unitText}`);
    return zone === 'UTC' ? (offsetColumn ? 0 : 1) : zone === 'local' && offsetColumn ? 1 : 0;
  };
  const ranked = [...all].sort((x, y) => zoneWorth(y) - zoneWorth(x));
  const whole = ranked.find((one) => one.stamps?.hasDate && one.stamps.hasTime);
  if (whole?.stamps?.seconds) {
    const { dates, seconds } = whole.stamps;
    return wallClock(
      { dates, seconds, offsets: writtenOffsets(whole.stamps), columns: [whole.column], offsetColumn },
      map,
    );
  }
  const found = timeOfDay(ranked, map);
  if (!found) return null;
  const { seconds, columns, dates, dateOpen, offsets } = found;
  const half = of(all, 'half-day').find((one) => one.column.texts)?.column;
  const halves = half?.texts;
  if (half && halves) {
    columns.push(half);
    for (let i = 0; i < seconds.length; i += 1)
      seconds[i] = ((seconds[i] ?? 0) % 43_200) + (/^p/i.test(halves[i] ?? '') ? 43_200 : 0);
  }
  const fraction = of(all, 'fraction').find((one) => one.column.numbers)?.column;
  const thousandths = fraction?.numbers;
  if (fraction && thousandths?.every((value) => !(value < 0 || value >= 1000)) && seconds.every((s) => !(s % 1 > 0))) {
    columns.push(fraction);
    for (let i = 0; i < seconds.length; i += 1) seconds[i] = (seconds[i] ?? 0) + (thousandths[i] ?? 0) / 1000;
  }
  return wallClock({ dates, seconds, offsets, columns, offsetColumn, dateOpen }, map);
}

interface TimeOfDay {
  seconds: Float64Array;
  columns: TimeColumn[];
  dates: Float64Array | null;
  /** orders in which the figures of the date may be */
  dateOpen: readonly DateFigures[];
  offsets: Float64Array | null;
}

/** Time and date from columns of their own: as cells, as packed figures, as days of a spreadsheet. */
function timeOfDay(ranked: readonly Candidate[], map: LogMap['time']): TimeOfDay | null {
  const isTime = (one: Candidate) =>
    one.stamps?.hasTime === true && one.role !== 'elapsed' && !passes(one.stamps.seconds, 90_000);
  const written = ranked.find((one) => isTime(one) && one.role !== null) ?? ranked.find(isTime);
  const date = ranked.find((one) => one.stamps?.hasDate);
  const [dateNumbers] = of(ranked, 'date').filter((one) => one.column.numbers);
  const told = figuresIn(map?.format ?? '') ?? figuresIn(`${dateNumbers?.column.name} ${dateNumbers?.column.unitText}`);
  const packed =
    date || !dateNumbers?.column.numbers ? null : packedDates(dateNumbers.column.numbers, told, map?.dayFirst);
  const dates = date?.stamps?.dates ?? packed?.dates ?? null;
  const dateColumn = date?.column ?? (packed ? dateNumbers?.column : undefined);
  const answer = (seconds: Float64Array, time: TimeColumn, offsets: Float64Array | null): TimeOfDay => ({
    seconds,
    columns: dateColumn ? [dateColumn, time] : [time],
    dates,
    dateOpen: packed?.open ?? [],
    offsets,
  });
  if (written?.stamps?.seconds) {
    return answer(written.stamps.seconds.slice(), written.column, writtenOffsets(written.stamps));
  }
  for (const { column } of of(ranked, 'time', 'date-time')) {
    if (!column.numbers) continue;
    const isToldPacked = /^hh?:?mm:?ss/i.test(column.unitText) || /hhmmss/i.test(column.name) || dates !== null;
    const seconds = packedTimes(column.numbers, isToldPacked);
    if (seconds) return answer(seconds, column, null);
    const share = dayShare(column, dateNumbers?.column);
    if (!share) continue;
    const columns = share.dates && dateNumbers ? [dateNumbers.column, column] : [column];
    return { seconds: share.seconds, columns, dates: share.dates, dateOpen: [], offsets: null };
  }
  return null;
}

/** True where any of the times reaches a limit, s. */
function passes(seconds: Float64Array | null, limit: number): boolean {
  for (let i = 0; seconds && i < seconds.length; i += 1) if ((seconds[i] ?? 0) >= limit) return true;
  return false;
}

/** Year, month, day, hour, minute and second in columns of their own. */
function partsOf(all: readonly Candidate[], offsetColumn: TimeColumn | null, map: LogMap['time']): RawClock | null {
  const part = (role: TimeRole) => of(all, role).find((one) => one.column.numbers)?.column;
  const [hour, second] = [part('hour'), part('second')];
  // In `YYYY MM DD hh mm ss` two columns are called the same.
  const months = of(all, 'month').flatMap(({ column }) => (column.numbers ? [column] : []));
  const minute = part('minute') ?? (second ? months.find((one) => one.index > (hour?.index ?? Infinity)) : undefined);
  if (!hour?.numbers || !minute?.numbers) return null;
  const [year, month, day, fraction] = [part('year'), part('month'), part('day'), part('fraction')];
  const seconds = hour.numbers.map(
    (h, i) =>
      h * 3600 + (minute.numbers?.[i] ?? 0) * 60 + (second?.numbers?.[i] ?? 0) + (fraction?.numbers?.[i] ?? 0) / 1000,
  );
  const dates =
    year?.numbers && month && day
      ? year.numbers.map((y, i) =>
          packDate(y < 100 ? y + 2000 : y, month.numbers?.[i] ?? Number.NaN, day.numbers?.[i] ?? Number.NaN),
        )
      : null;
  const columns = [...(dates ? [year, month, day] : []), hour, minute, second, fraction].filter((c) => c !== undefined);
  return wallClock({ dates, seconds, offsets: null, columns, offsetColumn }, map);
}

function elapsedOf(all: readonly Candidate[], map: LogMap['time']): RawClock | null {
  for (const { column, stamps } of all) {
    if (!stamps?.hasTime || !stamps.seconds) continue;
    const short = /mm:ss/i.test(column.unitText) && !/hh?:mm/i.test(column.unitText);
    const raw = short ? stamps.seconds.map((s) => s / 60) : stamps.seconds;
    return rawClock('elapsed', raw, [column.index], `"${column.column}" read as elapsed time`);
  }
  const named = of(all, 'elapsed', 'time', 'date-time', 'second', 'gps-seconds', 'epoch', 'fraction', 'minute');
  for (const { column } of map?.columns?.length ? all : named) {
    const clock = elapsedClock(column, map?.format);
    if (clock) return clock;
  }
  return null;
}
