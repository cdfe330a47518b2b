/**
 * Figures written on a card as tables to type into: one table for each kind of point, one row a point, the unit once for
 * a column. Made from the schema that the reduction itself reads them by.
 */
import type * as z from 'zod';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { baseName, quantityOf, siUnitOf, unitOf } from '../../analysis/units/index.ts';
import { nameInWords } from '../words/list.ts';
import { typedNumber } from '../words/typed-number.ts';
import { type InstrumentUnits, unitShown } from '../words/unit-shown.ts';
import type { FieldProblem, Typed } from './airplane-form.ts';
import { type Field, type Option, type Shape, schemaFields, unitOptions } from './schema-shape.ts';

export interface PointColumn {
  key: string;
  label: string;
  kind: 'stated' | 'number' | 'text' | 'choice';
  /** of a stated figure */
  units: Option[];
  unit: string;
  /** of a choice; the first is nothing */
  options: Option[];
  required: boolean;
}

export interface PointTable {
  /** value of the field that tells kinds of point apart, or empty where there is one kind */
  role: string;
  by: string;
  title: string;
  columns: PointColumn[];
}

/**
 * The tables of a reduction's points.
 * @param reduction one of the registry
 * @param units the airplane's instrument units: what a column starts with
 */
export function pointTables(reduction: Reduction, units: InstrumentUnits): PointTable[] {
  const shape = schemaFields(reduction.pointsSchema as z.ZodType).find((one) => one.key === 'points')?.shape;
  if (shape?.is === 'list') {
    return [{ role: '', by: '', title: 'Points', columns: shape.fields.flatMap((one) => columnOf(one, units)) }];
  }
  if (shape?.is === 'list-of-variants') {
    return [...shape.variants].map(([role, fields]) => ({
      role,
      by: shape.by,
      title: nameInWords(role),
      columns: fields.flatMap((one) => columnOf(one, units)),
    }));
  }
  return [{ role: '', by: '', title: 'Readings', columns: readingColumns(reduction, units) }];
}

/** Points that the schema takes by name of the quantity: the time, and what the reduction reads. */
function readingColumns(reduction: Reduction, units: InstrumentUnits): PointColumn[] {
  const names = [...new Set([...reduction.needs, ...reduction.uses].map(baseName))];
  const time = statedColumn('time', ['time'], true, units);
  const rest = names.flatMap((name): PointColumn[] => {
    const quantity = quantityOf(name);
    if (!quantity) return [];
    const required = reduction.needs.includes(name);
    if (quantity.dimension !== 'none') return [statedColumn(name, [quantity.dimension], required, units)];
    const options = ['on', 'off'].map((value) => ({ value, text: value }));
    return [{ key: name, label: nameInWords(name), kind: 'choice', units: [], unit: '', options, required }];
  });
  return [time, ...rest];
}

function columnOf({ key, shape, required }: Field, units: InstrumentUnits): PointColumn[] {
  const base = {
    key,
    label: nameInWords(key.replace(/([a-z])([A-Z])/g, '$1-$2').toLowerCase()),
    required,
    units: [],
    unit: '',
    options: [],
  };
  switch (shape.is) {
    case 'stated': {
      const [first] = shape.units;
      return first ? [statedColumn(key, [unitOf(first.value).dimension], required, units)] : [];
    }
    case 'number':
      return [{ ...base, kind: 'number' }];
    case 'text':
      return [{ ...base, kind: 'text' }];
    case 'choice':
      return [{ ...base, kind: 'choice', options: shape.options }];
    case 'tick':
      return [
        {
          ...base,
          kind: 'choice',
          options: [
            { value: 'yes', text: 'yes' },
            { value: 'no', text: 'no' },
          ],
        },
      ];
    default:
      return [];
  }
}

function statedColumn(key: string, dimensions: string[], required: boolean, units: InstrumentUnits): PointColumn {
  const options = unitOptions(dimensions);
  const dimension = unitOf(options[0]?.value ?? '1').dimension;
  return {
    key,
    label: nameInWords(key.replace(/([a-z])([A-Z])/g, '$1-$2').toLowerCase()),
    kind: 'stated',
    units: options,
    unit: unitShown(key, siUnitOf(dimension).id, units),
    options: [],
    required,
  };
}

/** Name of a cell's field in the form. */
export function cellName(table: number, row: number, key: string): string {
  return `p.${table}.${row}.${key}`;
}

/** Name of a column's unit in the form. */
export function unitName(table: number, key: string): string {
  return `u.${table}.${key}`;
}

export interface ReadPoints {
  points: Record<string, unknown>[];
  problems: FieldProblem[];
  /** where each point stands in the form, so that a problem of the schema finds its cell */
  places: { table: number; row: number }[];
}

/** Most rows of one table that are read. */
const ROWS = 400;

/** The points that were typed; rows left empty are no points. */
export function readPoints(tables: readonly PointTable[], typed: Typed): ReadPoints {
  const read: ReadPoints = { points: [], problems: [], places: [] };
  tables.forEach((table, t) => {
    for (let row = 0; row < ROWS && typed.has(cellName(t, row, table.columns[0]?.key ?? '')); row++) {
      const point = readRow(table, t, row, typed, read.problems);
      if (!point) continue;
      read.points.push(table.role === '' ? point : { [table.by]: table.role, ...point });
      read.places.push({ table: t, row });
    }
  });
  return read;
}

function readRow(
  table: PointTable,
  t: number,
  row: number,
  typed: Typed,
  problems: FieldProblem[],
): Record<string, unknown> | undefined {
  const point: Record<string, unknown> = {};
  for (const column of table.columns) {
    const name = cellName(t, row, column.key);
    const text = typed.get(name)?.at(-1)?.trim() ?? '';
    if (text === '') continue;
    const value = readCell(column, text, typed.get(unitName(t, column.key))?.at(-1) ?? column.unit);
    if (value === undefined) problems.push({ path: name, message: `“${text}” is not a number.` });
    else point[column.key] = value;
  }
  return Object.keys(point).length > 0 ? point : undefined;
}

function readCell(column: PointColumn, text: string, unit: string): unknown {
  if (column.kind === 'text') return text;
  if (column.kind === 'choice') return text === 'yes' ? true : text === 'no' ? false : text;
  const number = typedNumber(text);
  if (number === null) return undefined;
  return column.kind === 'number' ? number : { value: number, unit };
}

/** The cell that a problem of the schema is about: `points.3.time.value` to its name in the form; else as it came. */
export function cellOf(field: string, read: ReadPoints): string {
  const found = /^points\.(\d+)\.([^.]+)/.exec(field);
  const place = found ? read.places[Number(found[1])] : undefined;
  return place && found?.[2] !== undefined ? cellName(place.table, place.row, found[2]) : field;
}

/** True where a shape can be shown as a plain field: what is nested stays with the command and the API. */
export function isPlain(shape: Shape): boolean {
  return ['stated', 'text', 'number', 'tick', 'choice'].includes(shape.is);
}
