/** Rows of a reading table for one airplane: numbered runs, minutes, levels from its field, its own tanks. */
import type { Airplane } from '../airplane/index.ts';
import { type Condition, type Facts, holds, shows } from '../catalogue/index.ts';
import { fromSi } from '../units/index.ts';
import type { GroupHead, Row, RowGroup } from './card.ts';
import { type Line, words } from './line.ts';
import { ownNames } from './own-names.ts';
import { keyOf } from './reading-columns.ts';
import type { Rows } from './row-plans/index.ts';

export interface ReadyRows {
  rows: Row[];
  groups: RowGroup[];
  groupHead: GroupHead;
  /** unit of the heads, where the rows decide it */
  unit?: string;
}

const NO_GROUPS = { groups: [], groupHead: { label: '', unit: '', write: false, minute: false } };

/** legs from which a group is high enough for the minute it began, under its aim */
const LEGS_FOR_MINUTE = 3;

/** levels are read at round numbers on the altimeter: the step of the texts, 500 ft or 150 m */
const LEVEL_STEP: Readonly<Record<string, number>> = { ft: 500, m: 150 };

/** shares of a tank at which the gauge is read: finer at the low end, as the steps say */
const POURS = [0, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

/**
 * The rows of a plan.
 * @param plan which rows, object
 * @param airplane the description, object
 * @param facts its facts, map
 * @param tank index of the tank, where the table is one tank's
 * @returns rows with their groups; no rows where the airplane has nothing of the kind
 */
export function rowsOf(plan: Rows, airplane: Airplane, facts: Facts, tank: number): ReadyRows {
  if ('count' in plan) return plain(numbers(plan.count));
  if ('names' in plan) return plain(fitting(plan.names, facts));
  if ('blank' in plan) return { rows: numbers(plan.blank).map((n) => row(`row-${n}`, [])), ...NO_GROUPS };
  if ('minutes' in plan) return plain(steps(0, plan.minutes.every, plan.minutes.to));
  if ('levels' in plan) return levels(plan.levels, plan.by ?? 1, airplane);
  if ('headings' in plan) {
    const all = steps(0, plan.headings.every, 360 - plan.headings.every).map((text) => text.padStart(3, '0'));
    return plain(all);
  }
  if ('airspeeds' in plan) return airspeeds(plan.airspeeds, airplane);
  if ('groups' in plan) return grouped(plan.groups, facts);
  if ('speeds' in plan) return legs(plan.speeds, plan.legs, shows('kias', airplane).symbol);
  if ('own' in plan) return plain(ownNames(plan.own, airplane));
  return pours(airplane, tank);
}

function numbers(count: number): string[] {
  return Array.from({ length: count }, (_, i) => String(i + 1));
}

function steps(from: number, every: number, to: number): string[] {
  const count = Math.floor((to - from) / every + 1e-9) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => String(from + i * every));
}

function plain(heads: readonly string[]): ReadyRows {
  return { rows: heads.map((head, i) => row(`${i + 1}-${keyOf(head)}`, words(head))), ...NO_GROUPS };
}

function row(key: string, head: Line, group: string | null = null): Row {
  return { key, head, group, cells: {} };
}

function groupOf(key: string, name: string): RowGroup {
  return { key, head: words(name), measured: null, began: null };
}

function fitting(names: readonly (string | { when: Condition; name: string })[], facts: Facts): string[] {
  return names.flatMap((one) => (typeof one === 'string' ? [one] : holds(one.when, facts) ? [one.name] : []));
}

function levels(count: number, by: number, airplane: Airplane): ReadyRows {
  const unit = airplane.instruments.units.altitude;
  const step = (LEVEL_STEP[unit] ?? 1) * by;
  const field = fromSi(airplane.place.elevation.si, unit);
  const first = Math.floor(field / step) + 1;
  const heads = Array.from({ length: count }, (_, i) => String((first + i) * step));
  return { ...plain(heads), unit: shows('altitude', airplane).symbol };
}

function airspeeds({ from, every }: { from: number; every: number }, airplane: Airplane): ReadyRows {
  const { unit, symbol } = shows('kias', airplane);
  const top = airplane.speeds.neverExceed;
  const last = top ? Math.floor(fromSi(top.si, unit)) : from + 7 * every;
  const heads = steps(from, every, last);
  if (top && Number(heads.at(-1)) < last) heads.push(String(last));
  return { ...plain(heads), unit: symbol };
}

function grouped(
  groups: readonly { name: string; when?: Condition; rows: number | readonly string[] }[],
  facts: Facts,
): ReadyRows {
  const kept = groups.filter((group) => holds(group.when, facts));
  return {
    groupHead: NO_GROUPS.groupHead,
    groups: kept.map((group, i) => groupOf(`g${i + 1}`, group.name)),
    rows: kept.flatMap((group, i) => {
      const heads = typeof group.rows === 'number' ? numbers(group.rows) : group.rows;
      return heads.map((head, j) => row(`g${i + 1}-${j + 1}`, words(head), `g${i + 1}`));
    }),
  };
}

function legs(speeds: number, each: number, unit: string): ReadyRows {
  return {
    groupHead: { label: 'aim', unit, write: true, minute: each >= LEGS_FOR_MINUTE },
    groups: numbers(speeds).map((n) => groupOf(`speed-${n}`, `speed ${n}`)),
    rows: numbers(speeds).flatMap((n) =>
      numbers(each).map((leg) => row(`speed-${n}-${leg}`, words(leg), `speed-${n}`)),
    ),
  };
}

function pours(airplane: Airplane, tank: number): ReadyRows {
  const { unit, symbol } = shows('fuel', airplane);
  const capacity = airplane.fuel.tanks[tank]?.capacity;
  if (!capacity) return { rows: [], ...NO_GROUPS };
  const whole = POURS.map((share) => Math.round(fromSi(capacity.si * share, unit)));
  return { ...plain([...new Set(whole)].map(String)), unit: symbol };
}
