/** A flown card: the same card with what was read in its boxes, marked where it left the band, each with its source. */
import { boxKey, hasBox, MINUTE } from './boxes-of-row.ts';
import type { Box, Card, Expectation, MeasuredText } from './card.ts';

import { settingKey } from './entry-fields.ts';
import { words } from './line.ts';

/** What was read into one box, in the unit of the box. */
export interface BoxReading {
  /** key of the box, as on the entry page */
  key: string;
  /** as it is printed */
  text: string;
  /** its number, where it is one: compared with the band */
  value: number | null;
  /** where it comes from: `written by hand`, `engine monitor, 12:03:10 to 12:05:10` */
  source: string;
}

/** Source of a figure written on the card itself: it needs no number, only logs are listed. */
export const BY_HAND = 'written by hand';

const MARKS_MEAN = '▲ above, ▼ below it.';

/**
 * The card with its readings.
 * @param card the card as printed, object
 * @param readings what was read, list
 * @returns a card that prints with the values in its boxes and the sources at its foot
 */
export function flownCard(card: Card, readings: readonly BoxReading[]): Card {
  const sources = [...new Set(readings.map((one) => one.source).filter((source) => source !== BY_HAND))];
  const byKey = new Map(readings.map((one) => [one.key, one]));
  const measured = (key: string, expect: Expectation | null): MeasuredText | null => {
    const reading = byKey.get(key);
    if (!reading || reading.text === '') return null;
    const source = sources.indexOf(reading.source);
    return { text: reading.text, outside: outsideOf(reading.value, expect), source: source < 0 ? null : source + 1 };
  };
  const marked = (one: Card) =>
    [...one.tables.flatMap((table) => table.rows.flatMap((row) => Object.values(row.cells))), ...one.boxes].some(
      (cell) => cell.measured?.outside,
    );
  const filled = (box: Box): Box => ({ ...box, measured: measured(box.key, box.expect) });
  const flown: Card = {
    ...card,
    strip: card.strip.map(({ item, setting }) => ({
      item,
      setting: setting.length > 0 ? setting : words(byKey.get(settingKey(item))?.text ?? ''),
    })),
    tables: card.tables.map((table) => ({
      ...table,
      groups: table.groups.map((group) => ({
        ...group,
        measured: measured(boxKey(table.key, group.key), null),
        began: measured(boxKey(table.key, group.key, MINUTE), null),
      })),
      rows: table.rows.map((row) => ({
        ...row,
        cells: Object.fromEntries(
          table.columns.flatMap((column) => {
            if (!hasBox(table, row, column)) return [];
            const expect = row.cells[column.key]?.expect ?? null;
            const value = measured(boxKey(table.key, row.key, column.key), expect ?? column.expect);
            return expect || value ? [[column.key, { expect, measured: value }] as const] : [];
          }),
        ),
      })),
    })),
    boxes: card.boxes.map(filled),
    log: card.log.map(filled),
    sources,
  };
  return marked(flown) ? { ...flown, expectNote: `${flown.expectNote} ${MARKS_MEAN}`.trim() } : flown;
}

/**
 * Whether a value left its band.
 * @param value in the unit of the band, or null
 * @param expect what was expected, or null
 * @returns which way, or null where it stayed inside or nothing was expected
 */
export function outsideOf(value: number | null, expect: Expectation | null): 'above' | 'below' | null {
  if (value === null || expect === null) return null;
  if (expect.high !== null && value > expect.high) return 'above';
  return expect.low !== null && value < expect.low ? 'below' : null;
}
