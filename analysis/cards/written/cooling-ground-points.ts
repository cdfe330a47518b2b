/** Ground runs from the minute tables of a card: one run a table, what is held taken from strip and boxes. */
import type { ReadingTable } from '../card.ts';
import { plainText } from '../line.ts';
import { type CardPoint, type CardPoints, pointOf } from './card-points.ts';
import type { CardReader, WrittenNumber } from './card-reader.ts';

const READ = ['coolant-temperature', 'coolant-temperature-in', 'oil-temperature', 'cylinder-head-temperature'];

/**
 * Readings of a ground run, minute by minute.
 * @param reader what was written
 * @returns one set with a run for each table; none where the card has no minutes
 */
export function coolingGroundPoints(reader: CardReader): CardPoints[] {
  const tables = reader.card.tables.filter((table) => table.layout === 'minutes' && table.head.unit === 'min');
  if (tables.length === 0) return [];
  const remarks: string[] = [];
  const speed = reader.box('engine-speed');
  if (!speed)
    remarks.push('Engine speed held is not written: the reduction does without it only where it must refuse.');
  const door = percentIn(reader.setting('door') || reader.setting('cowl flap'));
  const moments = tables.flatMap((table) =>
    table.rows.filter((row) => isRead(reader, table, row)).map((row) => ({ table, row })),
  );
  const air = airAlong(reader, moments.length);
  if (air(0) === null) remarks.push('Outside air is not written: temperatures are not brought to another day.');
  const points = moments.map(({ table, row }, i): CardPoint => {
    const fan = table.holds['cooling-fan-state'] ?? fanIn(reader.setting('fan'));
    const outside = air(i);
    return pointOf(
      {
        ...Object.fromEntries(READ.map((name) => [name, reader.cell(table, row, name)])),
        'engine-speed': speed,
      },
      {
        time: { value: Number(plainText(row.head)), unit: 'min' },
        run: table.title || 'run',
        ...(door === null ? {} : { 'cowl-exit-position': { value: door, unit: '%' } }),
        ...(fan === null ? {} : { 'cooling-fan-state': fan }),
        ...(outside === null ? {} : { 'outside-air-temperature': outside }),
      },
    );
  });
  return [{ kind: 'cooling-ground', title: '', points, remarks }];
}

function isRead(reader: CardReader, table: ReadingTable, row: ReadingTable['rows'][number]): boolean {
  return READ.some((name) => reader.cell(table, row, name) !== null);
}

function percentIn(setting: string): number | null {
  const found = /^(\d+(?:[.,]\d+)?)\s*%?$/.exec(setting.trim())?.[1];
  return found === undefined ? null : Number(found.replace(',', '.'));
}

function fanIn(setting: string): 'on' | 'off' | null {
  const word = setting.trim().toLowerCase();
  return word === 'on' || word === 'off' ? word : null;
}

/** Air at each reading: along a line from what was read at the start to what was read at the end. */
function airAlong(reader: CardReader, count: number): (i: number) => { value: number; unit: string } | null {
  const start = reader.box('outside-air-start') ?? reader.box('outside-air');
  const end = reader.box('outside-air-end');
  const [a, b]: [WrittenNumber | null, WrittenNumber | null] = [start ?? end, end ?? start];
  return (i) => {
    if (!a || !b) return null;
    const share = count > 1 ? i / (count - 1) : 0;
    return { value: a.value + share * (b.value - a.value), unit: a.stated.unit };
  };
}
