/** Climbs by level and steady points by door, as a cooling flight's card holds them. */
import type { ReadingTable, Row } from '../card.ts';
import { plainText } from '../line.ts';
import { type CardPoint, type CardPoints, pointOf } from './card-points.ts';
import type { CardReader } from './card-reader.ts';

const HOT = ['coolant-temperature', 'oil-temperature', 'cylinder-head-temperature'];

/**
 * Levels of a cooling climb: one run a table, the height at the head of each row.
 * @param reader what was written
 * @returns one set; none where the card has no levels with temperatures
 */
export function coolingClimbPoints(reader: CardReader): CardPoints[] {
  const tables = reader.card.tables.filter((table) => table.layout === 'levels' && table.columns.some(isHot));
  if (tables.length === 0) return [];
  const remarks: string[] = [];
  const points = tables.flatMap((table, climb) =>
    table.rows.flatMap((row): CardPoint[] => {
      if (!isRead(reader, table, row)) return [];
      const time = reader.cell(table, row, 'time-from-start');
      if (!time) {
        remarks.push(`${reader.place(table, row)} is left out: its time is not written.`);
        return [];
      }
      const door = ofClimb(reader, climb, 'cowl-exit-position') ?? percent(reader.setting('door'));
      return [
        pointOf(
          {
            time,
            ...hotOf(reader, table, row),
            'outside-air-temperature': reader.cell(table, row, 'outside-air-temperature'),
            'indicated-airspeed': reader.cell(table, row, 'indicated-airspeed'),
          },
          {
            run: table.title || `climb ${climb + 1}`,
            'pressure-altitude': { value: Number(plainText(row.head)), unit: /ft/.test(table.head.unit) ? 'ft' : 'm' },
            ...(door === null ? {} : { 'cowl-exit-position': { value: door, unit: '%' } }),
          },
        ),
      ];
    }),
  );
  if (points.length > 0)
    remarks.push('The levels are taken as pressure altitudes: the altimeter set to 1013.25 hPa, or 29.92 inHg.');
  return [{ kind: 'cooling-climb', title: '', points, remarks }];
}

/**
 * Steady points of a door map: power at the head of the group, the door at the head of the row.
 * @param reader what was written
 * @returns one set; none where the card has no doors
 */
export function coolingFlightPoints(reader: CardReader): CardPoints[] {
  const tables = reader.card.tables.filter((table) => table.layout === 'matrix' && table.head.label === 'door');
  if (tables.length === 0) return [];
  const points = tables.flatMap((table) =>
    table.rows.flatMap((row): CardPoint[] =>
      isRead(reader, table, row)
        ? [
            pointOf(
              {
                ...hotOf(reader, table, row),
                'outside-air-temperature': reader.cell(table, row, 'outside-air-temperature'),
                'indicated-airspeed': reader.cell(table, row, 'indicated-airspeed'),
                'manifold-pressure': reader.cell(table, row, 'manifold-pressure'),
                'engine-speed': reader.cell(table, row, 'engine-speed') ?? reader.box('engine-speed'),
                'pressure-altitude': reader.box('pressure-altitude'),
              },
              {
                'cowl-exit-position': { value: Number(plainText(row.head)), unit: '%' },
                label: reader.place(table, row).slice(0, 60),
              },
            ),
          ]
        : [],
    ),
  );
  const remarks = reader.box('pressure-altitude') ? [] : ['Pressure altitude is not written: the reduction needs it.'];
  return [{ kind: 'cooling-flight', title: '', points, remarks: points.length > 0 ? remarks : [] }];
}

function isHot(column: { quantity: string | null }): boolean {
  return column.quantity !== null && HOT.includes(column.quantity);
}

function isRead(reader: CardReader, table: ReadingTable, row: Row): boolean {
  return Object.values(hotOf(reader, table, row)).some((one) => one !== null);
}

function hotOf(reader: CardReader, table: ReadingTable, row: Row) {
  return Object.fromEntries(HOT.map((name) => [name, reader.cell(table, row, name)]));
}

/** What was read once for a climb, from the list of climbs. */
function ofClimb(reader: CardReader, climb: number, quantity: string): number | null {
  const list = reader.card.tables.find((table) => table.layout === 'list' && table.head.label === 'climb');
  const row = list?.rows[climb];
  return list && row ? (reader.cell(list, row, quantity)?.value ?? null) : null;
}

function percent(setting: string): number | null {
  const found = /^(\d+)\s*%?$/.exec(setting.trim())?.[1];
  return found === undefined ? null : Number(found);
}
