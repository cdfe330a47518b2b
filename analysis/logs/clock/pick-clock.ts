/** Of all columns that speak of time, the ones to go by: the one that says most, the zone-certain one first. */
import type { LogMap } from '../log-map.ts';
import { packDate } from './clock-cell.ts';
import { elapsedClock, epochClock, satelliteWeekClock, serialDayClock } from './number-clock.ts';
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
  const isTime = (one: Candidate) =>
    one.stamps?.hasTime === true && one.role !== 'elapsed' && !one.stamps.seconds?.some((s) => s >= 90_000);
  const time = ranked.find((one) => isTime(one) && one.role !== null) ?? ranked.find(isTime);
  if (!time?.stamps?.seconds) return null;
  const seconds = time.stamps.seconds.slice();
  const columns = [time.column];
  const date = ranked.find((one) => one.stamps?.hasDate);
  const packed = date ? null : of(all, 'date').find((one) => one.column.numbers?.some((v) => v > 19_700_101));
  const dates = date?.stamps?.dates ?? (packed?.column.numbers ? splitDates(packed.column.numbers) : null);
  const dateColumn = date?.column ?? packed?.column;
  if (dateColumn) columns.unshift(dateColumn);
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
  return wallClock({ dates, seconds, offsets: writtenOffsets(time.stamps), columns, offsetColumn }, map);
}

const splitDates = (numbers: Float64Array) =>
  numbers.map((v) => packDate(Math.floor(v / 10_000), Math.floor(v / 100) % 100, v % 100));

/** Year, month, day, hour, minute and second in columns of their own. */
function partsOf(all: readonly Candidate[], offsetColumn: TimeColumn | null, map: LogMap['time']): RawClock | null {
  const part = (role: TimeRole) => of(all, role).find((one) => one.column.numbers)?.column;
  const [hour, minute, second] = [part('hour'), part('minute'), part('second')];
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
