/** What a box is expected to read: a prediction with its band, in the unit of the box, or nothing. */
import type { Prediction } from '../reductions/index.ts';
import type { Cell, ResultTable } from '../results/index.ts';
import {
  baseName,
  decimalsOf,
  differenceFromSi,
  fromSi,
  isUnit,
  quantityOf,
  show,
  toSi,
  unitOf,
} from '../units/index.ts';
import type { Ahead, Expectation, Row } from './card.ts';
import { ESTIMATED } from './line.ts';
import type { ColumnSeed } from './reading-columns.ts';

/** Asked for each box: which table, whether it is the card's first or a box of its own, column and row. */
export type Expect = (box: {
  table: string;
  first: boolean;
  column: ColumnSeed;
  row: Row | null;
}) => Expectation | null;

/** One predicted reading of a card, SI. */
export interface PredictedReading {
  /** glossary name; null where the box has none and is known by its words */
  quantity: string | null;
  /** title of the table it stands in; absent for the card's first table and its single boxes */
  table?: string;
  /** words of the row's head, such as the minute; absent for every row */
  row?: string;
  /** words of the reading, where several share a quantity */
  what?: string;
  value: number | null;
  low: number | null;
  high: number | null;
  /** SI unit id */
  unit: string;
  basis: string;
  /** a figure of the design without a band: it prints as such, and nothing is held against it */
  estimated?: boolean;
}

/** Predictions of a card, with the line that says what they rest on. */
export interface CardPredictions {
  readings: readonly PredictedReading[];
  note: string;
  /** what is predicted and has no box on the card, a line each */
  lines?: readonly string[];
  /** why something is not predicted */
  refusals?: readonly string[];
  /** minute by minute, to be watched */
  ahead?: readonly Ahead[];
}

export const FIRST_MEASUREMENT = 'Expect: no prediction, first measurement.';

/**
 * The line that says what the expectations rest on, or that there are none.
 * @param predictions of the card, or nothing
 * @param shown true where one of them stands beside a box
 * @returns text; the first measurement where nothing is known
 */
export function expectNote(predictions: CardPredictions | undefined, shown: boolean): string {
  const { note = '', lines = [], refusals = [] } = predictions ?? {};
  const said = [...(shown && note !== '' ? [note] : []), ...lines];
  const [why] = refusals;
  if (said.length > 0) return `Expect: ${[...said, ...(why ? [`No prediction: ${why}`] : [])].join('. ')}`;
  return why === undefined ? FIRST_MEASUREMENT : `Expect: no prediction: ${why}.`.replace(/\.\.$/, '.');
}

/** Nothing is expected. */
export const expectNothing: Expect = () => null;

/**
 * The expectations of a card.
 * @param predictions predicted readings, SI
 * @returns the answer for each box
 */
export function expectFrom(predictions: CardPredictions): Expect {
  return ({ table, first, column, row }) => {
    const head = row?.head.map((token) => (token.kind === 'text' ? token.text : '')).join('');
    const found = predictions.readings.find(
      (one) =>
        isSame(one.quantity, column.quantity) &&
        (one.table === undefined ? first : one.table === table) &&
        (one.row === undefined || one.row === head) &&
        (one.what === undefined || one.what === column.label),
    );
    return found && column.unitId ? expectationOf(found, column.unitId) : null;
  };
}

/** One channel: with or without its index, where only one of both has one. */
function isSame(predicted: string | null, read: string | null): boolean {
  if (predicted === null) return read === null;
  return read !== null && (predicted === read || predicted === baseName(read) || baseName(predicted) === read);
}

/**
 * A prediction as it is printed: `98 ± 3` where the band is even, `95 to 104` where it is not.
 * @param one the prediction, SI
 * @param unit unit id of the box, text
 * @returns the expectation, or null where there is no band to print
 */
export function expectationOf(one: PredictedReading, unit: string): Expectation | null {
  if (!isUnit(unit) || unitOf(unit).dimension !== unitOf(one.unit).dimension) return null;
  const { value, low, high, basis } = one;
  if (low === null && high === null) {
    if (!one.estimated || value === null) return null;
    return { text: `${show(value, unit, { decimals: 0 }).number} ${ESTIMATED}`, low, high, basis };
  }
  const ends = { low: low === null ? null : fromSi(low, unit), high: high === null ? null : fromSi(high, unit), basis };
  if (value !== null && low !== null && high !== null) {
    const even = Math.abs(high + low - 2 * value) <= 0.2 * (high - low);
    const half = differenceFromSi((high - low) / 2, unit);
    // a card is read at a glance: whole numbers unless the band is under one
    const decimals = half >= 1 ? 0 : decimalsOf(half);
    if (even) {
      const shown = show(value, unit, { decimals, u95: (high - low) / 2 });
      return { ...ends, text: `${shown.number} ± ${shown.half ?? ''}` };
    }
  }
  const text = (si: number) => show(si, unit, { decimals: 0 }).number;
  if (low !== null && high !== null) return { ...ends, text: `${text(low)} to ${text(high)}` };
  return { ...ends, text: low === null ? `under ${text(high ?? 0)}` : `over ${text(low)}` };
}

/**
 * The readings a reduction predicts, as far as they name a glossary quantity: single values, and tables whose rows run
 * over time, matched to the minutes of a card. A table column `name` may have `name-low` and `name-high`, or `name-u95`,
 * beside it.
 * @param prediction of a reduction, object
 * @param note what it rests on, said on the card, text
 * @returns predictions of a card; none where the reduction refused
 */
export function cardPredictions(prediction: Prediction, note: string): CardPredictions {
  if (prediction.status === 'refused') return { readings: [], note };
  const single = prediction.quantities
    .filter((one) => quantityOf(one.name) !== undefined)
    .map((one) => ({
      quantity: one.name,
      value: one.value,
      low: one.low,
      high: one.high,
      unit: one.unit,
      basis: one.why,
    }));
  return { readings: [...prediction.tables.flatMap((table) => readingsInTime(table, note)), ...single], note };
}

function readingsInTime(table: ResultTable, basis: string): PredictedReading[] {
  const at = (name: string) => table.columns.findIndex((column) => column.name === name);
  const time = table.columns.findIndex((column) => /^(time|minutes|from-seconds)$/.test(column.name));
  const unit = table.columns[time]?.unit;
  if (unit === undefined || !isUnit(unit)) return [];
  return table.columns.flatMap((column, c) => {
    if (quantityOf(column.name) === undefined) return [];
    const [low, high, u95] = [at(`${column.name}-low`), at(`${column.name}-high`), at(`${column.name}-u95`)];
    return table.rows.flatMap((row): PredictedReading[] => {
      const [moment, value] = [numberAt(row, time), numberAt(row, c)];
      if (moment === null) return [];
      const half = numberAt(row, u95);
      return [
        {
          quantity: column.name,
          row: String(Math.round(fromSi(toSi(moment, unit), 'min'))),
          value,
          low: numberAt(row, low) ?? (value !== null && half !== null ? value - half : null),
          high: numberAt(row, high) ?? (value !== null && half !== null ? value + half : null),
          unit: column.unit,
          basis,
        },
      ];
    });
  });
}

function numberAt(row: readonly Cell[], index: number): number | null {
  const cell = index < 0 ? null : row[index];
  return typeof cell === 'number' ? cell : null;
}
