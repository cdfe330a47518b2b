/** A column of a result table as numbers in the unit it is shown in. */
import type { ResultTable } from '../../analysis/results/index.ts';
import { differenceFromSi, fromSi, unitOf } from '../../analysis/units/index.ts';
import { type InstrumentUnits, unitShown } from '../words/unit-shown.ts';

export interface ShownNumbers {
  values: (number | null)[];
  symbol: string;
}

/**
 * A column by its name.
 * @param table as the result carries it, SI
 * @param name column name, text
 * @param units the airplane's instrument units, object
 * @param difference true for half-widths and corrections, which have no zero point of their own
 * @returns numbers, null where the cell has none; empty where the table has no such column
 */
export function columnOf(table: ResultTable, name: string, units: InstrumentUnits, difference = false): ShownNumbers {
  const index = table.columns.findIndex((one) => one.name === name);
  const unit = table.columns[index]?.unit;
  if (unit === undefined) return { values: [], symbol: '' };
  const shown = unitShown(name, unit, units);
  const convert = difference ? differenceFromSi : fromSi;
  return {
    values: table.rows.map((row) => {
      const cell = row[index];
      return typeof cell === 'number' ? convert(cell, shown) : null;
    }),
    symbol: unitOf(shown).symbol,
  };
}

/** Rows of a table where a column says something, as a table of their own. */
export function rowsWhere(table: ResultTable, name: string, is: unknown): ResultTable {
  const index = table.columns.findIndex((one) => one.name === name);
  return { ...table, rows: table.rows.filter((row) => row[index] === is) };
}

/** The different values of a column, in order of appearance. */
export function differentIn(table: ResultTable, name: string): unknown[] {
  const index = table.columns.findIndex((one) => one.name === name);
  return index < 0 ? [] : [...new Set(table.rows.map((row) => row[index]))];
}

/** Numbers only, for an x axis; a row without one is left out of both. */
export function paired(x: readonly (number | null)[], y: readonly (number | null)[]) {
  const kept = x.flatMap((one, i) => (one === null ? [] : [{ x: one, y: y[i] ?? null }]));
  return { x: kept.map((one) => one.x), y: kept.map((one) => one.y) };
}
