/** Legs of an airspeed calibration from a leg grid: speeds in groups, each with its legs. */
import { toSi } from '../../units/index.ts';
import { boxKey, MINUTE } from '../boxes-of-row.ts';
import type { ReadingTable, RowGroup } from '../card.ts';
import { type AboutFlight, type CardPoint, type CardPoints, lackingIn, pointOf } from './card-points.ts';
import type { CardReader } from './card-reader.ts';
import { massesByFuel } from './masses-by-fuel.ts';

const HOUR = 60;

/**
 * Legs of a card.
 * @param reader what was written
 * @param about mass and flap settings
 * @returns one set for all flap settings, which the reduction keeps apart; none where the card has no legs
 */
export function airspeedPoints(reader: CardReader, about: AboutFlight): CardPoints[] {
  const tables = reader.card.tables.filter(
    (table) => table.layout === 'legs' && table.columns.some((one) => one.quantity === 'track-true'),
  );
  if (tables.length === 0) return [];
  const points: CardPoint[] = [];
  const remarks: string[] = [];
  const began = minutesOf(reader, tables);
  if (began.remark) remarks.push(began.remark);
  const masses = massesByFuel(reader, about.startMass);
  for (const table of tables) {
    const flaps = settingOf(table, about.flaps);
    table.groups.forEach((group, g) => {
      const rows = table.rows.filter((one) => one.group === group.key);
      rows.forEach((row, leg) => {
        const figures = {
          airspeed: reader.cell(table, row, 'indicated-airspeed'),
          'pressure altitude': reader.cell(table, row, 'pressure-altitude'),
          'outside air': reader.cell(table, row, 'outside-air-temperature'),
          'ground speed': reader.cell(table, row, 'ground-speed'),
          track: reader.cell(table, row, 'track-true'),
        };
        const { lacking, nothing } = lackingIn(figures);
        if (nothing) return;
        const place = reader.place(table, row);
        if (lacking.length > 0) {
          remarks.push(`${place} is left out: ${lacking.join(' and ')} not written.`);
          return;
        }
        const minute = began.at(table, group, leg / rows.length);
        const mass = masses(g);
        points.push(
          pointOf(
            {
              'indicated-airspeed': figures.airspeed,
              'pressure-altitude': figures['pressure altitude'],
              'outside-air-temperature': figures['outside air'],
              'ground-speed': figures['ground speed'],
              'track-true': figures.track,
            },
            {
              ...(flaps === null ? {} : { flaps }),
              ...(minute === null ? {} : { clock: { value: minute, unit: 'min' } }),
              ...(mass === null ? {} : { mass: { value: mass, unit: 'kg' } }),
              label: place,
            },
          ),
        );
      });
    });
  }
  return [{ kind: 'airspeed', title: '', points, remarks }];
}

function settingOf(table: ReadingTable, settings: readonly string[]): string | null {
  const held = table.holds.flaps;
  if (held === undefined || settings.length === 0) return null;
  if (held === 'up') return settings[0] ?? null;
  if (held === 'landing') return settings.at(-1) ?? null;
  return settings.find((one) => /take.?off/i.test(one)) ?? settings[1] ?? null;
}

/**
 * Minutes from the first speed, out of the minutes of the clock at which each began, the hour carried on. Legs are
 * taken as evenly spread to the next speed's beginning.
 */
function minutesOf(reader: CardReader, tables: readonly ReadingTable[]) {
  const groups = tables.flatMap((table) =>
    table.groups.map((group) => ({ key: boxKey(table.key, group.key), flown: isFlown(reader, table, group) })),
  );
  const flown = groups.filter((one) => one.flown);
  const raw = flown.map(({ key }) => reader.plain(boxKey(key, MINUTE)));
  const fit = raw.every((minute) => minute !== null && Number.isInteger(minute) && minute >= 0 && minute < HOUR);
  if (!fit || raw.length < 2) {
    const some = raw.some((one) => one !== null);
    const remark = some
      ? 'The minutes are not used: not every speed has one between 0 and 59. A drifting wind cannot be told from a steady one.'
      : '';
    return { at: () => null, remark };
  }
  let hours = 0;
  const minutes = raw.map((minute, i) => {
    if (i > 0 && (minute ?? 0) < (raw[i - 1] ?? 0)) hours += HOUR;
    return hours + (minute ?? 0);
  });
  const first = minutes[0] ?? 0;
  const places = new Map(flown.map(({ key }, i) => [key, i]));
  return {
    at: (table: ReadingTable, group: RowGroup, share: number): number | null => {
      const i = places.get(boxKey(table.key, group.key));
      if (i === undefined) return null;
      const start = minutes[i] ?? 0;
      // the last speed is taken to last as long as the one before it
      const end = minutes[i + 1] ?? start + (start - (minutes[i - 1] ?? start));
      return start - first + share * (end - start);
    },
    remark: `Legs are taken as evenly spread between the minutes at which each speed began, over ${Math.round(toSi((minutes.at(-1) ?? 0) - first, 'min') / toSi(1, 'min'))} min.`,
  };
}

function isFlown(reader: CardReader, table: ReadingTable, group: RowGroup): boolean {
  return table.rows.some((row) => row.group === group.key && reader.cell(table, row, 'indicated-airspeed') !== null);
}
