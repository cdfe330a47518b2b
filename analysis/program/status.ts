/** Where each test stands, and what may come next: the status words of the trade, and what still holds a test back. */
import { gateHolding } from './gate.ts';
import type { Outing, Part, Program } from './program.ts';

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

/** Key of a part on record as done. */
export function partKey(test: string, part: number): string {
  return `${test}#${part}`;
}

/**
 * How far a program has come.
 * @param program the program, object
 * @param states states of tests by id, map
 * @param partsDone keys of parts noted as flown or done, set
 * @returns what is accepted, the next outing, what holds it back, and what is ready
 */
export function progressOf(program: Program, states: States, partsDone: ReadonlySet<string> = new Set()): Progress {
  const tests = program.stages.flatMap((stage) => stage.tests);
  const byId = new Map(tests.map((test) => [test.id, test]));
  const isDone = (id: string) => states.get(id) === 'accepted';
  const isBehind = ({ test, part }: Part) => isDone(test) || partsDone.has(partKey(test, part));
  const next = program.outings.find((outing) => !outing.parts.every(isBehind)) ?? null;
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

/** states that say a test was flown or done, whatever came of it */
const FLOWN: ReadonlySet<TestState> = new Set(['flown', 'reduced', 'accepted']);

/**
 * Numbers of outings that are flown or done, in whole or in part: a new plan leaves them as they are.
 * @param program the program, object
 * @param states states of tests by id, map
 * @param partsDone keys of parts noted as flown or done, set
 * @returns numbers of outings
 */
export function outingsDone(program: Program, states: States, partsDone: ReadonlySet<string>): number[] {
  const flown = ({ test, part, of }: Part) =>
    partsDone.has(partKey(test, part)) ||
    states.get(test) === 'accepted' ||
    (of === 1 && FLOWN.has(states.get(test) ?? 'planned'));
  return program.outings.filter(({ parts }) => parts.some(flown)).map((outing) => outing.number);
}

/**
 * Tests to be flown again whose outing is behind: the plan has no place for them until it is made anew.
 * @param program the program, object
 * @param states states of tests by id, map
 * @param partsDone keys of parts noted as flown or done, set
 * @returns parts in the order of the program
 */
export function toPutBack(program: Program, states: States, partsDone: ReadonlySet<string>): Part[] {
  const again = (test: string) => ['repeat', 'stale'].includes(states.get(test) ?? 'planned');
  const done = new Set(outingsDone(program, states, partsDone));
  return program.outings.flatMap((outing) =>
    outing.parts.filter((part) => again(part.test) && done.has(outing.number)),
  );
}
