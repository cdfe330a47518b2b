/** What a log read, put into the boxes of the card it was flown by: legs into the leg grid, minutes into the table. */
import type { Result } from '../results/index.ts';
import { fromSi, isUnit, show, toSi } from '../units/index.ts';
import { boxKey } from './boxes-of-row.ts';
import type { Card, ReadingTable, Row } from './card.ts';
import type { BoxReading } from './flown-card.ts';
import { plainText } from './line.ts';
import { numberIn, recordsOf } from './predictions/result-rows.ts';

/** Legs at one speed differ by less than this, m/s: the band a leg is held in, either way. */
const SAME_SPEED = toSi(6, 'kt');
const SAME_DOOR = 0.02;

/** A sample of the logs: the value of a quantity at a time, SI, or null where there is none. */
export type SampleOf = (quantity: string, seconds: number) => number | null;

/**
 * Readings of a card out of a result reduced from logs.
 * @param card as printed, object
 * @param result the result, object
 * @param sampleOf looks a value up in the logs, function
 * @returns readings with the file and the time of each; none where the card's boxes are not what the result measured
 */
export function readingsFromLog(card: Card, result: Result, sampleOf: SampleOf): BoxReading[] {
  const file = result.provenance.files[0]?.name ?? 'log';
  switch (result.kind) {
    case 'airspeed':
      return legReadings(card, result, file);
    case 'cooling-ground':
      return minuteReadings(card, result, file, sampleOf);
    default:
      return [];
  }
}

/**
 * Quantities of the logs that a card's minute tables ask for.
 * @param card as printed, object
 * @returns glossary names
 */
export function quantitiesOf(card: Card): string[] {
  return [...new Set(card.tables.flatMap((table) => table.columns.flatMap((column) => column.quantity ?? [])))];
}

type Leg = Record<string, unknown>;

/** Legs in the order flown, those at one speed together, into the groups of the tables of their flap setting. */
function legReadings(card: Card, result: Result, file: string): BoxReading[] {
  const readings: BoxReading[] = [];
  const legs = recordsOf(result, 'legs').filter((one) => numberIn(one, 'indicated-airspeed') !== null);
  const tables = card.tables.filter((table) => table.layout === 'legs');
  const settings = [...new Set(legs.map((one) => String(one.flaps)))];
  for (const setting of settings) {
    const table = tables.length === 1 ? tables[0] : tables.find((one) => isSetting(one, setting, settings));
    if (!table) continue;
    const sets = bySpeed(legs.filter((one) => String(one.flaps) === setting));
    table.groups.forEach((group, g) => {
      const rows = table.rows.filter((row) => row.group === group.key);
      (sets[g] ?? []).slice(0, rows.length).forEach((leg, i) => {
        const row = rows[i];
        if (row) readings.push(...rowOf(table, row, leg, `${file}, ${spanOf(leg)}`));
      });
    });
  }
  return readings;
}

function isSetting(table: ReadingTable, setting: string, settings: readonly string[]): boolean {
  const held = table.holds.flaps;
  if (held === 'up') return setting === settings[0] || setting === 'up';
  if (held === 'takeoff') return /take.?off/i.test(setting);
  return held === setting;
}

function bySpeed(legs: readonly Leg[]): Leg[][] {
  const sets: Leg[][] = [];
  for (const leg of legs) {
    const last = sets.at(-1);
    const aim = numberIn(last?.[0], 'indicated-airspeed');
    const ias = numberIn(leg, 'indicated-airspeed') ?? 0;
    if (last && aim !== null && Math.abs(ias - aim) <= SAME_SPEED) last.push(leg);
    else sets.push([leg]);
  }
  return sets;
}

function rowOf(table: ReadingTable, row: Row, values: Record<string, unknown>, source: string): BoxReading[] {
  return table.columns.flatMap((column) => {
    const si = column.quantity === null ? null : numberIn(values, column.quantity);
    return si === null || column.unitId === null || column.perGroup
      ? []
      : [reading(boxKey(table.key, row.key, column.key), si, column.unitId, source)];
  });
}

function reading(key: string, si: number, unit: string, source: string): BoxReading {
  // as an instrument shows it: whole, temperatures to a tenth
  const decimals = unit.startsWith('deg') && unit !== 'deg' ? 1 : 0;
  return { key, text: show(si, unit, { decimals }).number, value: isUnit(unit) ? fromSi(si, unit) : null, source };
}

/** The longest stretch held as each minute table says, read at its minutes. */
function minuteReadings(card: Card, result: Result, file: string, sampleOf: SampleOf): BoxReading[] {
  const held = recordsOf(result, 'segments');
  const door = card.strip.find((one) => one.item === 'door')?.setting[0];
  const wanted = door?.kind === 'number' ? Number(door.number) / 100 : null;
  return card.tables
    .filter((table) => table.layout === 'minutes' && table.head.unit === 'min')
    .flatMap((table) => {
      const fan = table.holds['cooling-fan-state'];
      const like = held.filter(
        (one) =>
          // an engine that stands is no run
          (numberIn(one, 'engine-speed') ?? 1) >= 1 &&
          (fan === undefined || typeof one.fan !== 'boolean' || one.fan === (fan === 'on')) &&
          (wanted === null || typeof one.exit !== 'number' || Math.abs(one.exit - wanted) <= SAME_DOOR),
      );
      const lasting = (one: Leg) => (numberIn(one, 'to-seconds') ?? 0) - (numberIn(one, 'from-seconds') ?? 0);
      const [longest] = [...like].sort((a, b) => lasting(b) - lasting(a));
      const [from, to] = [numberIn(longest, 'from-seconds'), numberIn(longest, 'to-seconds')];
      if (from === null || to === null) return [];
      return table.rows.flatMap((row) => {
        const seconds = from + toSi(Number(plainText(row.head)), 'min');
        if (!(seconds <= to)) return [];
        const values = Object.fromEntries(
          table.columns.flatMap(({ quantity }) => (quantity === null ? [] : [[quantity, sampleOf(quantity, seconds)]])),
        );
        return rowOf(table, row, values, `${file}, from ${clockOf(from)} after its first record`);
      });
    });
}

function spanOf(leg: Leg): string {
  return `${clockOf(numberIn(leg, 'from-seconds') ?? 0)} to ${clockOf(numberIn(leg, 'to-seconds') ?? 0)} after its first record`;
}

function clockOf(seconds: number): string {
  const whole = Math.round(seconds);
  const minute = toSi(1, 'min');
  return `${Math.floor(whole / minute)}:${String(whole % minute).padStart(2, '0')}`;
}
