/** The boxes of a card as fields of its entry page. */
import * as z from 'zod';
import { DOUBT_MARKS, doubtReading, type EntryField, type EntryTable } from '../../analysis/cards/index.ts';
import { optionsOf } from '../parts/field.view.ts';
import { typedNumber } from '../words/typed-number.ts';

export const boxField = z.strictObject({
  name: z.string(),
  id: z.string(),
  /** what is read, where, and in which unit, for those who hear the page */
  label: z.string(),
  short: z.string(),
  value: z.string(),
  number: z.boolean(),
  clock: z.boolean(),
  wide: z.boolean(),
  options: z.array(z.strictObject({ value: z.string(), text: z.string(), selected: z.boolean() })),
  expect: z.string(),
  mark: z.string(),
  doubt: z.string(),
  /** what the page's module weighs a reading by, JSON */
  about: z.string(),
});
export type BoxField = z.infer<typeof boxField>;

export const entryTableView = z.strictObject({
  title: z.string(),
  grouped: z.boolean(),
  groupHead: z.strictObject({ label: z.string(), unit: z.string() }),
  head: z.strictObject({ label: z.string(), unit: z.string() }),
  columns: z.array(z.strictObject({ label: z.string(), unit: z.string(), expect: z.string() })),
  rows: z.array(
    z.strictObject({
      opens: z.string(),
      group: z.string(),
      groupFields: z.array(boxField),
      head: z.string(),
      cells: z.array(z.strictObject({ span: z.string(), field: boxField })),
    }),
  ),
});

/** Name of a box in the form. */
export function boxName(key: string): string {
  return `box.${key}`;
}

/** A box as a field. */
export function fieldOfBox(field: EntryField, texts: Readonly<Record<string, string>>): BoxField {
  const { key, label, at, unit, input, digits, expect, plausible } = field;
  const value = texts[key] ?? '';
  const doubt = doubtReading(field, value, typedNumber(value));
  const choices = input === 'tick' ? unit.split('/').map((one) => one.trim()) : [];
  const short = [label, unit].filter(Boolean).join(' ');
  return {
    name: boxName(key),
    id: `b-${key.replace(/[^A-Za-z0-9]+/g, '-')}`,
    label: [at, input === 'tick' ? label : [label, unit].filter(Boolean).join(', ')].filter(Boolean).join(': '),
    short: input === 'tick' ? label : short,
    value,
    number: input === 'number',
    clock: input === 'clock',
    wide: input === 'words' || digits > 6,
    options:
      choices.length > 0
        ? optionsOf([{ value: '', text: '' }, ...choices.map((one) => ({ value: one, text: one }))], value)
        : [],
    expect: expect?.text ?? '',
    mark: doubt ? DOUBT_MARKS[doubt.kind] : '',
    doubt: doubt?.words ?? '',
    about: JSON.stringify({ input, unit, plausible, expect }),
  };
}

/** A reading table of the card, its boxes in their places. */
export function entryTableOf(
  table: EntryTable,
  texts: Readonly<Record<string, string>>,
): z.infer<typeof entryTableView> {
  return {
    title: table.title,
    grouped: table.rows.some((row) => row.group !== ''),
    groupHead: table.groupHead,
    head: table.head,
    columns: table.columns.map(({ label, unit, expect }) => ({ label, unit, expect: expect?.text ?? '' })),
    rows: table.rows.map((row) => ({
      opens: row.opens > 0 ? String(row.opens) : '',
      group: row.group,
      groupFields: row.groupFields.map((one) => fieldOfBox(one, texts)),
      head: row.head,
      cells: row.cells.flatMap((cell, c) => {
        if (!cell) return [];
        const whole = table.columns[c]?.expect;
        const field = fieldOfBox(cell, texts);
        return [
          {
            span: table.columns[c]?.perGroup && row.opens > 1 ? String(row.opens) : '',
            // said once at the head of the column
            field: whole ? { ...field, expect: '' } : field,
          },
        ];
      }),
    })),
  };
}
