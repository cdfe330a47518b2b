/** A result from figures written on a card: the same reduction as from a log. */
import * as z from 'zod';
import { KINDS_FROM_CARDS } from '../../analysis/cards/index.ts';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { type FieldProblem, shapedFields, type Typed } from '../forms/airplane-form.ts';
import { readShaped } from '../forms/airplane-reading.ts';
import { cellName, isPlain, pointTables, type ReadPoints, readPoints, unitName } from '../forms/points-table.ts';
import { schemaFields } from '../forms/schema-shape.ts';
import { fieldPart, optionsOf, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import { methodPath } from './help.view.ts';
import type { PageContext } from './kept.ts';
import { writePath } from './written.view.ts';

const option = z.strictObject({ value: z.string(), text: z.string(), selected: z.boolean() });

export const resultNewView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  action: z.string(),
  method: z.string(),
  tests: z.array(z.strictObject({ value: z.string(), text: z.string(), id: z.string(), checked: z.boolean() })),
  /** the same figures in the layout of a printed card */
  cards: z.array(z.strictObject({ text: z.string(), href: z.string() })),
  tables: z.array(
    z.strictObject({
      title: z.string(),
      columns: z.array(
        z.strictObject({
          label: z.string(),
          required: z.boolean(),
          unit: z.string(),
          units: z.array(option),
        }),
      ),
      rows: z.array(
        z.strictObject({
          number: z.int(),
          cells: z.array(
            z.strictObject({
              name: z.string(),
              label: z.string(),
              value: z.string(),
              wrong: z.string(),
              number: z.boolean(),
              options: z.array(option),
            }),
          ),
        }),
      ),
      more: z.string(),
    }),
  ),
  options: z.array(fieldPart),
  by: z.array(fieldPart),
});
export type ResultNewView = z.infer<typeof resultNewView>;

export interface TypedPoints {
  typed: Typed;
  problems?: readonly FieldProblem[];
  others?: readonly ProblemPart[];
  /** title of the table that is to get more rows */
  more?: string;
}

/** Rows a table starts with, and how many more are given at a time. */
const ROWS = 6;

/** The entry form of a reduction's points. */
export function resultNewPage(
  reduction: Reduction,
  titles: ReadonlyMap<string, string>,
  { typed, problems = [], others = [], more = '' }: TypedPoints,
  { book, units }: PageContext,
): ResultNewView {
  const at = (name: string) => typed.get(name)?.at(-1) ?? '';
  const wrongAt = (name: string) =>
    problems
      .filter((one) => one.path === name)
      .map((one) => one.message)
      .join(' ');
  const tables = pointTables(reduction, units);
  const flownFor = typed.get('test') ?? [];
  return {
    frame: frameOf(`${reduction.title}: written figures`, {
      question: reduction.answers,
      book,
      way: 'results',
      crumbs: [{ text: 'Results', href: bookPath(book.id, '/results') }],
      modules: ['page-log'],
    }),
    problems: {
      heading: 'Not reduced. What you typed is kept here',
      items: [...problems.map(({ message }) => ({ message, where: '', mend: '' })), ...others],
    },
    action: bookPath(book.id, `/results/new/${reduction.kind}`),
    method: methodPath(reduction.kind),
    tests: reduction.serves.flatMap((test) => {
      const text = titles.get(test);
      const checked = flownFor.includes(test);
      return text === undefined ? [] : [{ value: test, text, id: `for-${test}`, checked }];
    }),
    cards: KINDS_FROM_CARDS.includes(reduction.kind)
      ? reduction.serves.flatMap((test) => {
          const text = titles.get(test);
          return text === undefined ? [] : [{ text, href: writePath(book.id, test) }];
        })
      : [],
    tables: tables.map((table, t) => {
      const first = table.columns[0]?.key ?? '';
      let rows = 0;
      while (typed.has(cellName(t, rows, first))) rows += 1;
      const asked = more === table.title ? ROWS : 0;
      return {
        title: table.title,
        columns: table.columns.map(({ key, label, required, units: offered, unit }) => ({
          label,
          required,
          unit: offered.length > 0 ? unitName(t, key) : '',
          units: offered.length > 0 ? optionsOf(offered, at(unitName(t, key)) || unit) : [],
        })),
        rows: Array.from({ length: Math.max(rows, ROWS) + asked }, (_, row) => ({
          number: row + 1,
          cells: table.columns.map(({ key, label, kind, options }) => {
            const name = cellName(t, row, key);
            return {
              name,
              label: `${label}, row ${row + 1}`,
              value: at(name),
              wrong: wrongAt(name),
              number: kind === 'stated' || kind === 'number',
              options: kind === 'choice' ? optionsOf([{ value: '', text: '' }, ...options], at(name)) : [],
            };
          }),
        })),
        more: table.title,
      };
    }),
    options: shapedFields(plainOptions(reduction), 'options', { instruments: { units } }, typed, problems),
    by: [textField({ name: 'who', label: 'Your name' }, at('who'))],
  };
}

function plainOptions(reduction: Reduction) {
  return schemaFields(reduction.optionsSchema).filter((one) => isPlain(one.shape));
}

export interface ReadEntry {
  points: { kind: string; points: ReadPoints['points'] };
  options: unknown;
  tests: string[];
  problems: FieldProblem[];
  read: ReadPoints;
}

/** What was typed into the entry form. */
export function readEntry(reduction: Reduction, typed: Typed, { units }: PageContext): ReadEntry {
  const read = readPoints(pointTables(reduction, units), typed);
  const options = readShaped(plainOptions(reduction), 'options', typed);
  return {
    points: { kind: reduction.kind, points: read.points },
    options: options.json,
    tests: (typed.get('test') ?? []).filter((one) => reduction.serves.includes(one)),
    problems: [...read.problems, ...options.problems],
    read,
  };
}
