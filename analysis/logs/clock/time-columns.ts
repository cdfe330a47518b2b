/** Which columns of a file are offered to the clock: those named so, those whose cells are times, those a person chose. */
import type { LogMap } from '../log-map.ts';
import { type ColumnStore, textsOf } from '../rows/column-store.ts';
import { allNumbers } from '../rows/kept-numbers.ts';
import type { HeaderColumn } from '../text/layout.ts';
import type { TimeColumn } from './raw-clock.ts';
import type { Stamps } from './read-stamps.ts';
import { type TimeRole, timeRole } from './time-names.ts';

/**
 * Columns that may tell time.
 * @param headers the columns' names
 * @param stores their cells, in the same order
 * @param map what a person confirmed
 * @returns the columns as the clock takes them
 */
export function timeColumns(
  headers: readonly HeaderColumn[],
  stores: readonly ColumnStore[],
  map: LogMap['time'],
): TimeColumn[] {
  return headers.flatMap((header, i) => {
    const store = stores[i];
    if (!store) return [];
    const { column, index, unitText } = header;
    const name = nameForClock(header);
    const chosen = map?.columns?.includes(column) === true;
    const stamps = stampsOf(store);
    const named = timeRole(name) ?? (timeRole(unitText) === 'elapsed' && unitText === name ? 'elapsed' : null);
    if (named === null && !stamps && !chosen) return [];
    return [
      {
        column,
        index,
        name,
        unitText,
        texts: store.kind === 'text' ? textsOf(store) : null,
        numbers: store.kind === 'number' ? allNumbers(store.kept) : null,
        stamps,
        example: store.clockExample,
      },
    ];
  });
}

/** `GPS Seconds` and `UTC Minute` were parted into a name and a unit, and are one name. */
function nameForClock({ name, column }: HeaderColumn): string {
  const whole = timeRole(column);
  return whole !== null && (timeRole(name) === null || PARTS.includes(whole)) ? column : name;
}

const PARTS: readonly TimeRole[] = ['hour', 'minute', 'second', 'gps-seconds'];

function stampsOf({ kind, first, second, offsets, odd }: ColumnStore): Stamps | null {
  if (kind !== 'time' && kind !== 'date' && kind !== 'date-time') return null;
  return {
    dates: kind === 'time' ? null : first,
    seconds: kind === 'time' ? first : kind === 'date-time' ? second : null,
    offsets,
    hasDate: kind !== 'time',
    hasTime: kind !== 'date',
    strange: odd.count,
  };
}
