/** Hours: what the program takes, against hours assigned or a list of tasks; and the ledger of what was flown. */
import type { Airplane } from '../airplane/index.ts';
import { OVERHEAD_MINUTES, overheadMinutes } from './outing-rules.ts';
import type { Hours, Outing, ProgramTest } from './program.ts';

const MINUTES_PER_HOUR = 60;

/**
 * Hours of a program.
 * @param airplane the description, object
 * @param tests tests of the program, list
 * @param outings outings of the program, list
 * @returns hours on condition, planned and on the ground, against what is assigned, in words
 */
export function hoursOf(airplane: Airplane, tests: readonly ProgramTest[], outings: readonly Outing[]): Hours {
  const program = airplane.plan.program;
  const flights = outings.filter((outing) => outing.kind === 'flight');
  const planned = sum(flights.map((flight) => flight.minutesTotal)) / MINUTES_PER_HOUR;
  const base = {
    onCondition: rounded(sum(tests.map((test) => test.flightMinutes)) / MINUTES_PER_HOUR),
    planned: rounded(planned),
    ground: rounded(sum(tests.map((test) => test.groundMinutes)) / MINUTES_PER_HOUR),
    flights: flights.length,
    overhead: rounded((flights.length * OVERHEAD_MINUTES) / MINUTES_PER_HOUR),
    climbs: rounded(sum(flights.map((one) => overheadMinutes(one.height ?? 0) - OVERHEAD_MINUTES)) / MINUTES_PER_HOUR),
    newThings: flights.filter((one) => one.opens !== null).length,
  };
  if (program.kind === 'task-list') {
    const ids = new Set(tests.map((test) => test.id));
    const tasks = program.tasks.map((task) => ({
      title: task.title,
      tests: task.tests,
      missing: task.tests.filter((id) => !ids.has(id)),
    }));
    return {
      kind: 'task-list',
      assigned: null,
      ...base,
      difference: null,
      words: taskWords(tasks.length, base.planned),
      tasks,
    };
  }
  const assigned = program.hours;
  const difference = rounded(planned - assigned);
  return {
    kind: 'fixed-hours',
    assigned,
    ...base,
    difference,
    words: hourWords(assigned, base.planned, difference),
    tasks: [],
  };
}

export interface LedgerEntry {
  /** minutes of one flight, off to on */
  minutes: number;
  landings: number;
}

export interface Ledger {
  flights: number;
  hours: number;
  landings: number;
  /** hours still to fly against those assigned; null for a task list */
  remaining: number | null;
  words: string;
}

/**
 * The ledger of flown time against what is assigned.
 * @param entries flights flown, minutes and landings each, list
 * @param hours hours of the program, object
 * @returns totals, what remains, in words
 */
export function ledgerOf(entries: readonly LedgerEntry[], hours: Hours): Ledger {
  const flown = rounded(sum(entries.map((entry) => entry.minutes)) / MINUTES_PER_HOUR);
  const landings = sum(entries.map((entry) => entry.landings));
  const remaining = hours.assigned === null ? null : Math.max(0, rounded(hours.assigned - flown));
  const total = `${flown} h flown in ${entries.length} flights, ${landings} landings`;
  const words =
    remaining === null
      ? `${total}; the program ends when each task is shown, not by hours`
      : remaining === 0
        ? `${total}; the ${hours.assigned} h assigned are flown, the tests of the program are not thereby done`
        : `${total}; ${remaining} h of the ${hours.assigned} h assigned remain`;
  return { flights: entries.length, hours: flown, landings, remaining, words };
}

function hourWords(assigned: number, planned: number, difference: number): string {
  if (difference >= 0) {
    return `The tests take about ${planned} h, ${difference} h more than the ${assigned} h assigned: an assigned number is the least, not the plan. Repeats come on top.`;
  }
  return `The tests take about ${planned} h; ${-difference} h of the ${assigned} h assigned remain for repeats and for practice inside what was shown.`;
}

function taskWords(tasks: number, planned: number): string {
  if (tasks === 0) {
    return `Task list: no task entered yet. Enter the list your operating limitations name; the tests alone take about ${planned} h.`;
  }
  return `Task list: ${tasks} tasks; the program ends when each is shown and the entry is made. The tests take about ${planned} h.`;
}

function sum(list: readonly number[]): number {
  return list.reduce((total, one) => total + one, 0);
}

function rounded(hours: number): number {
  return Math.round(hours * 10) / 10;
}
