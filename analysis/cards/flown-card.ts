/** A flown card: the same card with what was read in its boxes, marked where it left the band, each with its source. */
import { boxKey, hasBox, MINUTE } from './boxes-of-row.ts';
import type { Box, Card, Expectation, MeasuredText } from './card.ts';

import { settingKey } from './entry-fields.ts';
import { plainText, words } from './line.ts';

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

/**
 * The card with its readings.
 * @param card the card as printed, object
 * @param readings what was read, list
 * @returns a card that prints with the values in its boxes and the sources at its foot
 */
export function flownCard(card: Card, readings: readonly BoxReading[]): Card {
  const kept = readings.filter((one, i) => readings.findIndex((other) => other.key === one.key) === i);
  const sources = [...new Set(kept.map((one) => one.source).filter((source) => source !== BY_HAND))];
  // of two readings of a box the first one stands
  const byKey = new Map([...readings].reverse().map((one) => [one.key, one]));
  const measured = (key: string, expect: Expectation | null): MeasuredText | null => {
    const reading = byKey.get(key);
    if (!reading || reading.text === '') return null;
    const source = sources.indexOf(reading.source);
    return { text: reading.text, outside: outsideOf(reading.value, expect), source: source < 0 ? null : source + 1 };
  };
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
    exceeded: [],
  };
  return { ...flown, exceeded: exceededOn(flown) };
}

/** Each value out of its band: where it was read, what was read, what was expected. */
function exceededOn(flown: Card): Card['exceeded'] {
  const inTables = flown.tables.flatMap((table) =>
    table.rows.flatMap((row) =>
      table.columns.map((column) => {
        const cell = row.cells[column.key];
        const group = plainText(table.groups.find((one) => one.key === row.group)?.head ?? []);
        const head = [plainText(row.head), table.head.unit].filter(Boolean).join(' ');
        const at = [table.title, group, head].filter(Boolean).join(', ');
        return { at, of: column, measured: cell?.measured ?? null, expect: cell?.expect ?? column.expect };
      }),
    ),
  );
  const single = flown.boxes.map((box) => ({ at: '', of: box, measured: box.measured, expect: box.expect }));
  return [...inTables, ...single].flatMap(({ at, of, measured, expect }) => {
    if (!measured?.outside || !expect) return [];
    const what = [at, of.label].filter(Boolean).join(': ');
    const text = `${what} ${measured.text} ${of.unit} is ${measured.outside} ${expect.text} ${of.unit}`;
    return [{ way: measured.outside, text: text.replaceAll('  ', ' ').trim() }];
  });
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
