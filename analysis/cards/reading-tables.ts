/**
 * A test's readings as tables and boxes. The test's own plan says which rows stand ready (row-plans/); a reading no
 * plan takes gets a table by its moment (each minute, each leg, per tank), or a box where it is read once.
 */
import type { Airplane } from '../airplane/index.ts';
import {
  type CatalogueTest,
  type Facts,
  factsFor,
  holds,
  type PreparedReading,
  type PreparedTest,
} from '../catalogue/index.ts';
import { hasBox } from './boxes-of-row.ts';
import type { Box, ReadingTable } from './card.ts';
import type { Expect } from './expectation.ts';
import { type ColumnSeed, columnsOf } from './reading-columns.ts';
import { rowsOf } from './reading-rows.ts';
import { ROW_PLANS, type TablePlan } from './row-plans/index.ts';

/** Moments that come once: a box each. */
const ONCE =
  /^(once|end|start|after|final|level|lowest|highest|computed|climb|shut-down|events|full power|full case|at restore|night load|before power|after |\d+ min|15 min|start and |start, |before, |up and |once, )/;

/**
 * The tables and boxes of a test.
 * @param test the test of the catalogue, object
 * @param ready the test made ready for the airplane, object
 * @param airplane the description, object
 * @param expect what is expected of a reading at a row; null where nothing is
 * @returns tables in order, and boxes
 */
export function readingTables(
  test: CatalogueTest,
  ready: PreparedTest,
  airplane: Airplane,
  expect: Expect,
): { tables: ReadingTable[]; boxes: Box[] } {
  const facts = factsFor(airplane);
  const plans = (ROW_PLANS[test.id] ?? []).filter((plan) => holds(plan.when, facts));
  const planned = new Set(plans.flatMap((plan) => plan.at));
  const rest = ready.readings.filter((reading) => !planned.has(reading.at));
  const once = rest.filter((reading) => ONCE.test(reading.at));
  const moments = [...new Set(rest.filter((reading) => !ONCE.test(reading.at)).map((reading) => reading.at))];
  const all = [...plans, ...moments.map(planFor)];
  const tables = all.flatMap((plan) => tablesOf(plan, ready.readings, airplane, facts));
  return {
    tables: tables.map((table, i) => withExpectations({ ...table, key: `t${i + 1}` }, i === 0, expect)),
    boxes: once.flatMap((reading) =>
      columnsOf(reading, airplane, false).map((seed) => ({
        ...seed,
        expect: expect({ table: '', first: true, column: seed, row: null }),
        measured: null,
      })),
    ),
  };
}

function tablesOf(
  plan: TablePlan,
  readings: readonly PreparedReading[],
  airplane: Airplane,
  facts: Facts,
): Omit<ReadingTable, 'key'>[] {
  const taken = readings.filter(
    (reading) => plan.at.includes(reading.at) && !plan.without?.includes(reading.quantity ?? ''),
  );
  const tanks = 'own' in plan.rows && (plan.rows.own === 'tank' || plan.rows.own === 'source');
  const columns = taken.flatMap((reading) =>
    columnsOf(reading, airplane, tanks || plan.eachTank === true).map((seed) => ({
      ...seed,
      perGroup: plan.perGroup?.includes(reading.at) === true,
    })),
  );
  const titles = plan.eachTank ? airplane.fuel.tanks.map((tank) => tank.name) : [plan.title ?? ''];
  return titles.flatMap((title, tank) => {
    const { rows, groups, groupHead, unit } = rowsOf(plan.rows, airplane, facts, tank);
    if (rows.length === 0 || columns.length === 0) return [];
    return [
      {
        layout: plan.layout,
        title,
        head: { label: plan.head, unit: unit ?? plan.unit ?? '' },
        columns: distinct(columns).map((seed) => ({ ...seed, expect: null, expectsByRow: false })),
        groupHead,
        groups,
        rows,
        holds: { ...plan.holds },
      },
    ];
  });
}

/** Two readings may share their words; their keys must not. */
function distinct<C extends ColumnSeed>(columns: readonly C[]): C[] {
  const seen = new Map<string, number>();
  return columns.map((column) => {
    const count = (seen.get(column.key) ?? 0) + 1;
    seen.set(column.key, count);
    return count === 1 ? column : { ...column, key: `${column.key}-${count}` };
  });
}

/** Expectations that differ from row to row stand beside their boxes; one that holds for all stands once, above. */
function withExpectations(table: ReadingTable, first: boolean, expect: Expect): ReadingTable {
  const columns = table.columns.map((column) => {
    const byRow = table.rows.map((row) =>
      hasBox(table, row, column) ? expect({ table: table.title, first, column, row }) : undefined,
    );
    const texts = new Set(byRow.flatMap((one) => (one === undefined ? [] : [one?.text ?? ''])));
    const whole = byRow[0] ?? null;
    const same = texts.size === 1;
    return { column: { ...column, expect: same ? whole : null, expectsByRow: !same }, byRow };
  });
  return {
    ...table,
    columns: columns.map((one) => one.column),
    rows: table.rows.map((row, r) => ({
      ...row,
      cells: Object.fromEntries(
        columns.flatMap(({ column, byRow }) => {
          const one = byRow[r];
          return column.expectsByRow && one ? [[column.key, { expect: one, measured: null }] as const] : [];
        }),
      ),
    })),
  };
}

/** A table for a moment no plan names. */
function planFor(at: string): TablePlan {
  const minutes = /^each (\d+)? ?min$/.exec(at);
  if (at === '1 Hz')
    return { at: [at], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every: 2, to: 20 } } };
  if (minutes) {
    const every = Number(minutes[1] ?? 1);
    return { at: [at], layout: 'minutes', head: 'time', unit: 'min', rows: { minutes: { every, to: 10 * every } } };
  }
  if (at === 'each step of height') return { at: [at], layout: 'levels', head: 'altimeter', rows: { levels: 8 } };
  if (at === 'each leg') return { at: [at], layout: 'legs', head: 'leg', rows: { speeds: 4, legs: 4 } };
  if (/^per (tank|battery|wheel)/.test(at)) {
    const own = at.startsWith('per tank') ? 'tank' : at.startsWith('per battery') ? 'battery' : 'wheel';
    return { at: [at], layout: 'list', head: own, rows: { own } };
  }
  const named = /^(?:per|each) (.+)$/.exec(at)?.[1];
  if (named) return { at: [at], layout: 'list', head: named, rows: { blank: 6 } };
  return { at: [at], layout: 'repeats', head: 'run', rows: { count: 5 } };
}
