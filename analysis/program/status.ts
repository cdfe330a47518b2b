/** Where each test stands, and what may come next: the status words of the trade, and what still holds a test back. */
import { gateHolding } from './gate.ts';
import type { Outing, Program } from './program.ts';

export const TEST_STATES = [
  'planned',
  'briefed',
  'flown',
  'reduced',
  'accepted',
  'repeat',
  'stale',
  'not applicable',
] as const;

export type TestState = (typeof TEST_STATES)[number];

/** states of tests by id; a test not named is planned */
export type States = ReadonlyMap<string, TestState>;

export interface Waiting {
  test: string;
  /** needs not accepted yet */
  for: string[];
  /** gate it stands behind, or null */
  gate: string | null;
  /** numbers its card lacks */
  missing: string[];
}

export interface Progress {
  accepted: number;
  of: number;
  /** the next outing that is not done, or null at the end */
  next: Outing | null;
  /** tests of that outing and what holds each back; none empty-handed when it is free to go */
  holds: Waiting[];
  /** tests that could be done now by what they wait for */
  ready: string[];
}

/**
 * How far a program has come.
 * @param program the program, object
 * @param states states of tests by id, map
 * @returns what is accepted, the next outing, what holds it back, and what is ready
 */
export function progressOf(program: Program, states: States): Progress {
  const tests = program.stages.flatMap((stage) => stage.tests);
  const byId = new Map(tests.map((test) => [test.id, test]));
  const isDone = (id: string) => states.get(id) === 'accepted';
  const next = program.outings.find((outing) => outing.tests.some((id) => !isDone(id))) ?? null;
  const open = tests.filter((test) => !isDone(test.id));
  const waiting = (id: string): Waiting => {
    const test = byId.get(id);
    const aboard = new Set(next?.tests ?? []);
    return {
      test: id,
      for: (test?.needs ?? []).filter((need) => !isDone(need) && !aboard.has(need)),
      gate: gateHolding({ id }, program)?.id ?? null,
      missing: (test?.missing ?? []).map((one) => one.meaning),
    };
  };
  return {
    accepted: tests.length - open.length,
    of: tests.length,
    next,
    holds: (next?.tests ?? [])
      .filter((id) => !isDone(id))
      .map(waiting)
      .filter((one) => one.for.length > 0 || one.gate !== null || one.missing.length > 0),
    ready: open.filter((test) => test.needs.every(isDone)).map((test) => test.id),
  };
}
