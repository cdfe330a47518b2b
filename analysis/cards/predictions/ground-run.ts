/** A ground run's minutes: what the next run of a condition should read, from its accepted result. */
import type { Airplane } from '../../airplane/index.ts';
import { fromSi, quantityOf, show, toSi, unitOf } from '../../units/index.ts';
import type { Ahead, Card, ReadingTable } from '../card.ts';
import { type CardPredictions, expectationOf, type PredictedReading } from '../expectation.ts';
import { plainText } from '../line.ts';
import type { CardPredictor } from './predictions-for.ts';
import { numberIn, recordsOf } from './result-rows.ts';

/** A door this near to the one measured is the same, and an engine speed, shares. */
const SAME_DOOR = 0.02;
const SAME_SPEED = 0.02;

/**
 * Predict the minute tables of a card.
 * @param ask prediction of the result, function
 * @param about card, airplane, the result and its name
 * @returns readings by minute, or why there are none
 * @throws OutOfRange never: only conditions that were held are asked for
 */
export const predictGroundRun: CardPredictor = (ask, { card, airplane, result, name }) => {
  const tables = card.tables.filter((table) => table.layout === 'minutes' && table.head.unit === 'min');
  const held = recordsOf(result, 'longest-run');
  const readings: PredictedReading[] = [];
  const notes: string[] = [];
  const ahead: Ahead[] = [];
  const refusals: string[] = [];
  for (const table of tables) {
    const fan = fanOf(card, table);
    const door = doorOf(card);
    const like = held.filter(
      (one) =>
        (door === null || typeof one.exit !== 'number' || Math.abs(one.exit - door) <= SAME_DOOR) &&
        (fan === null || typeof one.fan !== 'boolean' || one.fan === fan),
    );
    const chosen = chooseHeld(like, wantedSpeed(card, airplane));
    const speed = numberIn(chosen, 'engine-speed');
    if (!chosen || speed === null) {
      refusals.push(`${table.title || 'this run'}: its door and fan were not held long enough before`);
      continue;
    }
    const longest = Math.max(...table.rows.map((row) => Number(plainText(row.head)) || 0));
    const prediction = ask({
      'engine-speed': { value: speed, unit: '1/s' },
      ...(typeof chosen.exit === 'number' ? { 'cowl-exit-position': { value: chosen.exit, unit: '1' } } : {}),
      ...(typeof chosen.fan === 'boolean' ? { 'cooling-fan-state': chosen.fan ? 'on' : 'off' } : {}),
      duration: { value: Math.max(1, longest), unit: 'min' },
    });
    if (prediction.status === 'refused') {
      refusals.push(`${table.title || 'this run'}: ${prediction.reason ?? 'not predicted'}`);
      continue;
    }
    const minutes = prediction.tables
      .flatMap(readingsByMinute)
      .map((one) => ({ ...one, table: table.title, basis: name }));
    readings.push(...minutes);
    ahead.push(...aheadOf(minutes, table.title || 'this run', airplane.instruments.units.temperature));
    const words = (si: number | null) => (si === null ? '?' : show(si, 'degC', { decimals: 0 }).text);
    // an engine speed is held within a few; the next ten says it
    const rpm = Math.round(fromSi(speed, 'rpm') / 10) * 10;
    notes.push(
      `${table.title ? `${table.title}: ` : ''}at ${rpm} rpm from ${words(numberIn(chosen, 'start'))} in air of ${words(numberIn(chosen, 'air'))}`,
    );
  }
  return { readings, note: `${name}, ${[...new Set(notes)].join('; ')}`, refusals, ahead } satisfies CardPredictions;
};

/** The band of every minute, for the eye: a departure is seen long before the next reading is due. */
function aheadOf(minutes: readonly PredictedReading[], run: string, unit: string): Ahead[] {
  const rows = minutes.flatMap((one) => {
    const text = expectationOf(one, unit)?.text;
    return text === undefined || one.row === undefined ? [] : [{ head: one.row, text }];
  });
  const what = minutes[0]?.quantity?.replace(/-temperature.*/, '').replaceAll('-', ' ') ?? '';
  const { symbol } = unitOf(unit);
  return rows.length === 0 ? [] : [{ title: `${run}: min and ${what} ${symbol}, minute by minute`, rows }];
}

/** The rows of a `next-run` table as predicted readings; the start itself is not predicted. */
function readingsByMinute(table: Parameters<typeof recordsOf>[0]['tables'][number]): PredictedReading[] {
  const quantity = table.columns.map((one) => one.name).find((one) => quantityOf(one) !== undefined);
  if (quantity === undefined) return [];
  return recordsOf({ tables: [table] }, table.name).flatMap((row) => {
    const [time, value] = [numberIn(row, 'time'), numberIn(row, quantity)];
    const [low, high] = [numberIn(row, `${quantity}-low`), numberIn(row, `${quantity}-high`)];
    if (time === null || low === null || high === null || high <= low) return [];
    return [{ quantity, row: String(Math.round(time / toSi(1, 'min'))), value, low, high, unit: 'K', basis: '' }];
  });
}

type Held = Record<string, unknown>;

/** The condition at the engine speed wanted, where that was held; else the one held longest. */
function chooseHeld(like: readonly Held[], wanted: number | null): Held | undefined {
  const lasting = (one: Held) => (numberIn(one, 'to-seconds') ?? 0) - (numberIn(one, 'from-seconds') ?? 0);
  const byLength = [...like].sort((a, b) => lasting(b) - lasting(a));
  const same = byLength.find((one) => {
    const speed = numberIn(one, 'engine-speed');
    return wanted !== null && speed !== null && Math.abs(speed - wanted) <= SAME_SPEED * wanted;
  });
  return same ?? byLength[0];
}

function wantedSpeed(card: Card, airplane: Airplane): number | null {
  const power = plainText(card.strip.find((one) => one.item === 'power')?.setting ?? []);
  if (power === 'idle') return airplane.engine?.idleSpeed?.si ?? null;
  return power === 'check' ? (airplane.engine?.checkSpeed?.si ?? null) : null;
}

function fanOf(card: Card, table: ReadingTable): boolean | null {
  const said =
    table.holds['cooling-fan-state'] ?? plainText(card.strip.find((one) => one.item === 'fan')?.setting ?? []);
  return said === 'on' ? true : said === 'off' ? false : null;
}

function doorOf(card: Card): number | null {
  const token = card.strip.find((one) => one.item === 'door' || one.item === 'cowl flap')?.setting[0];
  return token?.kind === 'number' ? Number(token.number) / 100 : null;
}
