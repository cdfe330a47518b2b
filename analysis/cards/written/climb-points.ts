/** Climbs from a card: timed bands by speed and way, or the steps of a check climb. */
import { fromSi, toSi } from '../../units/index.ts';
import type { ReadingTable, Row } from '../card.ts';
import { plainText } from '../line.ts';
import { type AboutFlight, type CardPoint, type CardPoints, lackingIn, pointOf } from './card-points.ts';
import type { CardReader, WrittenNumber } from './card-reader.ts';
import { massWith } from './masses-by-fuel.ts';

/**
 * Climbs of a card.
 * @param reader what was written
 * @param about the mass stated
 * @returns one set for each flap setting: their rates must not be mixed
 */
export function climbPoints(reader: CardReader, about: AboutFlight): CardPoints[] {
  const bands = reader.card.tables.filter((table) => hasColumn(table, 'time-through-band'));
  if (bands.length > 0) return sawtooth(reader, bands, about);
  const steps = reader.card.tables.find((table) => hasColumn(table, 'time-per-step-of-height'));
  return steps ? [checkClimb(reader, steps)] : [];
}

function hasColumn(table: ReadingTable, key: string): boolean {
  return table.columns.some((one) => one.key === key);
}

function sawtooth(reader: CardReader, bands: readonly ReadingTable[], about: AboutFlight): CardPoints[] {
  const heights = reader.card.tables.find((table) => hasColumn(table, 'pressure-altitude-bottom'));
  const first = bands.flatMap((table) => table.rows.flatMap((row) => fuelAt(reader, table, row) ?? []))[0] ?? null;
  const sets = new Map<string, CardPoints>();
  for (const table of bands) {
    const title = table.holds.flaps ?? '';
    const set = sets.get(title) ?? { kind: 'climb', title, points: [], remarks: [] };
    sets.set(title, set);
    const altitude = heights?.rows.find((row) => table.title.startsWith(plainText(row.head)));
    for (const [way, row] of rowsByWay(table)) {
      const band = (reading: string) => (heights && altitude ? reader.cell(heights, altitude, reading) : null);
      const read = {
        airspeed: reader.cell(table, row, 'indicated-airspeed'),
        time: reader.cell(table, row, 'time-through-band'),
      };
      if (lackingIn(read).nothing) continue;
      const figures = {
        ...read,
        'outside air': reader.cell(table, row, 'outside-air-temperature'),
        bottom: band('pressure-altitude-bottom'),
        top: band('pressure-altitude-top'),
      };
      const { lacking } = lackingIn(figures);
      const place = reader.place(table, row);
      if (lacking.length > 0) {
        set.remarks.push(`${place} is left out: ${lacking.join(' and ')} not written.`);
        continue;
      }
      const mass = massWith(fuelAt(reader, table, row), first, about.startMass);
      const heading = headingOf(band('heading-magnetic'), way);
      set.points.push(
        pointOf(
          {
            'indicated-airspeed': figures.airspeed,
            bottom: figures.bottom,
            top: figures.top,
            time: figures.time,
            'outside-air-temperature': figures['outside air'],
            'engine-speed': band('engine-speed'),
          },
          {
            ...(heading === null ? {} : { 'heading-magnetic': heading }),
            ...(mass === null ? {} : { mass: { value: mass, unit: 'kg' } }),
            label: place,
          },
        ),
      );
    }
  }
  return [...sets.values()].filter((set) => set.points.length > 0 || set.remarks.length > 0);
}

/** Rows with the number of their way, from 0: the second is the reciprocal of the first. */
function rowsByWay(table: ReadingTable): [number, Row][] {
  return table.rows.map((row) => [table.rows.filter((one) => one.group === row.group).indexOf(row), row]);
}

function headingOf(first: WrittenNumber | null, way: number): { value: number; unit: string } | null {
  if (!first) return null;
  const turned = first.value + (way % 2 === 0 ? 0 : fromSi(Math.PI, 'deg'));
  return { value: turned % fromSi(2 * Math.PI, 'deg'), unit: first.stated.unit };
}

function fuelAt(reader: CardReader, table: ReadingTable, row: Row): number | null {
  const read = reader.cell(table, row, 'fuel-aboard');
  return read ? toSi(read.value, read.stated.unit) : null;
}

/** Steps from one level to the next; the first level only starts the clock. */
function checkClimb(reader: CardReader, table: ReadingTable): CardPoints {
  const points: CardPoint[] = [];
  const remarks: string[] = [];
  const unit = /ft/.test(table.head.unit) ? 'ft' : 'm';
  table.rows.forEach((row, i) => {
    const before = table.rows[i - 1];
    const figures = {
      time: reader.cell(table, row, 'time-per-step-of-height'),
      airspeed: reader.cell(table, row, 'indicated-airspeed'),
      'outside air': reader.cell(table, row, 'outside-air-temperature'),
    };
    const { lacking, nothing } = lackingIn(figures);
    if (nothing) return;
    const place = reader.place(table, row);
    if (!before) {
      remarks.push(`${place}: the first level starts the clock, its time is not used.`);
      return;
    }
    if (lacking.length > 0) {
      remarks.push(`${place} is left out: ${lacking.join(' and ')} not written.`);
      return;
    }
    points.push(
      pointOf(
        {
          'indicated-airspeed': figures.airspeed,
          time: figures.time,
          'outside-air-temperature': figures['outside air'],
        },
        {
          bottom: { value: Number(plainText(before.head)), unit },
          top: { value: Number(plainText(row.head)), unit },
          label: place,
        },
      ),
    );
  });
  if (points.length > 0)
    remarks.push('The levels are taken as pressure altitudes: the altimeter set to 1013.25 hPa, or 29.92 inHg.');
  return { kind: 'climb', title: '', points, remarks };
}
