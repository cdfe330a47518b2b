/** From a test's readings to columns and boxes: how wide, what is written, and several where one reading means several. */
import type { Airplane } from '../airplane/index.ts';
import type { Measure, PreparedReading } from '../catalogue/index.ts';
import { fromSi } from '../units/index.ts';
import type { Column, Write } from './card.ts';
import { tankNames, wheelNames } from './own-names.ts';

/** What is written down by one reading; several where its words or its moment name several. */
export type ColumnSeed = Omit<Column, 'expect' | 'expectsByRow' | 'perGroup'>;

const WRITES: Readonly<Record<string, { write: Write; digits: number; unit: string }>> = {
  text: { write: 'words', digits: 0, unit: '' },
  name: { write: 'words', digits: 0, unit: '' },
  checksum: { write: 'words', digits: 0, unit: '' },
  hex: { write: 'words', digits: 0, unit: 'hex' },
  date: { write: 'words', digits: 0, unit: 'date' },
  'yes/no': { write: 'tick', digits: 0, unit: 'yes/no' },
  'yes/no, initials': { write: 'words', digits: 0, unit: 'yes/no, initials' },
  'present/absent': { write: 'tick', digits: 0, unit: 'yes/no' },
  'ok/defect': { write: 'tick', digits: 0, unit: 'ok/defect' },
  'on/off': { write: 'tick', digits: 0, unit: 'on/off' },
  'hh:mm': { write: 'clock', digits: 4, unit: 'hh:mm' },
  'unit of channel': { write: 'number', digits: 5, unit: 'with unit' },
  'unit of item': { write: 'number', digits: 5, unit: 'with unit' },
  year: { write: 'number', digits: 4, unit: 'year' },
};

const FOUR: ReadonlySet<Measure> = new Set(['distance', 'rpm', 'mass', 'arm', 'watts', 'climb-rate', 'density']);

/** readings whose words name several */
const SEVERAL: Readonly<Record<string, readonly string[]>> = {
  'toe, camber': ['toe', 'camber'],
  'blade angle low, high': ['blade angle, low stop', 'blade angle, high stop'],
  'fan current start, steady': ['fan current, start', 'fan current, steady'],
  'pressure start, end': ['pressure, start', 'pressure, end'],
  'time up, down': ['time up', 'time down'],
  'flap angle left, right': ['flap angle left', 'flap angle right'],
  'cut-in, cut-out, relief': ['pressure'],
  'off, on': ['off', 'on'],
};

/** moments that mean several columns or boxes */
const MOMENTS: Readonly<Record<string, readonly string[]>> = {
  'start and end': ['start', 'end'],
  'start, end': ['start', 'end'],
  'before, after': ['before', 'after'],
  'bottom, top': ['bottom', 'top'],
  'start and peak': ['start', 'peak'],
  'up and down': ['up', 'down'],
  'each point, up and down': ['going up', 'going down'],
  'once, pitch and roll': ['pitch', 'roll'],
  'per wheel per run': ['run 1', 'run 2', 'run 3'],
  'twice per wheel': ['first', 'second'],
};

const PER_LEG = new Set(['per leg each swing', 'per leg each', 'per leg']);

/**
 * The columns one reading needs.
 * @param reading as the catalogue prepared it, object
 * @param airplane the description, object
 * @param rowsNameTanks true where the rows are the tanks, so that one column serves all
 * @returns at least one
 */
export function columnsOf(reading: PreparedReading, airplane: Airplane, rowsNameTanks: boolean): ColumnSeed[] {
  const indexed = reading.quantity?.endsWith('#n') === true;
  const tanks = indexed && reading.quantity?.startsWith('fuel-quantity') && !rowsNameTanks;
  const hottest = indexed && reading.quantity?.startsWith('cylinder-head-temperature');
  const base = SEVERAL[reading.what] ?? [hottest ? `hottest ${reading.what}` : reading.what];
  const legs = PER_LEG.has(reading.at) && airplane.gear.retractable && reading.measure === 'seconds';
  const ends = legs ? wheelNames(airplane) : tanks ? tankNames(airplane) : (MOMENTS[reading.at] ?? ['']);
  return base.flatMap((what) =>
    ends.map((end) => {
      const label = end === '' ? what : `${what}${legs ? ' ' : ', '}${end}`;
      return {
        key: keyOf(label),
        label,
        quantity: reading.quantity?.replace('#n', '') ?? null,
        ...writing(reading, airplane),
      };
    }),
  );
}

/** How one reading is written down. */
function writing(
  reading: PreparedReading,
  airplane: Airplane,
): { unit: string; unitId: string | null; write: Write; digits: number } {
  const words = reading.measure === null ? WRITES[reading.unit] : undefined;
  if (words) return { ...words, unitId: null };
  return { unit: reading.unit, unitId: reading.unitId, write: 'number', digits: digitsOf(reading, airplane) };
}

function digitsOf(reading: PreparedReading, airplane: Airplane): number {
  const { measure, what, unitId } = reading;
  const top = airplane.plan.practiceCeiling;
  const ceiling = unitId && top ? fromSi(top.si, unitId) : 0;
  if (measure === null) return 3;
  if (measure === 'altitude' || measure === 'height') {
    const difference = /lost|loss|error|shift|swing|overshoot/.test(what);
    return difference ? 3 : ceiling >= 10_000 ? 5 : 4;
  }
  return FOUR.has(measure) ? 4 : 3;
}

/** A key of small letters, digits and hyphens. */
export function keyOf(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}
