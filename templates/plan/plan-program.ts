/** The program in the plan: stages with their tests, what stops them, what counts as shown, gates, what is left out. */
import * as z from 'zod';
import { conditionLines } from '../../analysis/cards/gates.ts';
import { plainText } from '../../analysis/cards/index.ts';
import { CATALOGUE, type CatalogueTest, linesFor, type PreparedTest } from '../../analysis/catalogue/index.ts';
import type { Program, ProgramTest } from '../../analysis/program/index.ts';
import { count, listInWords, sentence } from '../words/list.ts';
import { minutesInWords } from '../words/time.ts';
import type { PlanInput } from './plan-input.ts';

const test = z.strictObject({
  position: z.int(),
  title: z.string(),
  aim: z.string(),
  because: z.string(),
  why: z.string(),
  outing: z.string(),
  shown: z.array(z.string()),
  stops: z.array(z.string()),
  conditions: z.array(z.string()),
  hazards: z.array(z.string()),
  missing: z.string(),
  standing: z.string(),
});

export const stagePart = z.strictObject({
  title: z.string(),
  about: z.string(),
  gate: z.string(),
  tests: z.array(test),
});
export type StagePart = z.infer<typeof stagePart>;

/** A test of the program with its lines made ready for the airplane. */
export interface PlannedTest {
  planned: ProgramTest;
  /** null where nothing but the program knows it */
  ready: PreparedTest | null;
}

/** A line that so many tests share stands once, for all of them, in section 7. */
const SHARED_BY = 10;

/** The tests of the program with their lines, in its order. */
export function plannedTests({ program, airplane, ownTests = [], known = {} }: PlanInput): PlannedTest[] {
  const sources = new Map<string, CatalogueTest>([...CATALOGUE, ...ownTests].map((one) => [one.id, one]));
  return program.stages
    .flatMap((stage) => stage.tests)
    .map((planned) => {
      const source = sources.get(planned.id);
      return { planned, ready: source ? linesFor(source, airplane, known) : null };
    })
    .sort((a, b) => a.planned.position - b.planned.position);
}

/** Stop lines of many tests, the most common first. */
export function sharedStops(tests: readonly PlannedTest[]): SharedLine[] {
  return sharedLines(tests, stopsOf);
}

/** Conditions of many tests, the most common first. */
export function sharedConditions(tests: readonly PlannedTest[]): SharedLine[] {
  return sharedLines(tests, conditionsOf);
}

export interface SharedLine {
  text: string;
  /** numbers of the tests it holds for, in words */
  tests: string;
}

function sharedLines(tests: readonly PlannedTest[], linesOf: (test: PlannedTest) => string[]): SharedLine[] {
  const held = new Map<string, number[]>();
  for (const test of tests) {
    for (const text of new Set(linesOf(test))) held.set(text, [...(held.get(text) ?? []), test.planned.position]);
  }
  return [...held]
    .filter(([, positions]) => positions.length >= SHARED_BY)
    .sort((a, b) => b[1].length - a[1].length)
    .map(([text, positions]) => ({ text: sentence(text), tests: rangesInWords(positions) }));
}

function stopsOf({ ready }: PlannedTest): string[] {
  return (ready?.stop ?? []).map((line) => sentence(line.text));
}

function conditionsOf({ ready }: PlannedTest): string[] {
  return ready ? conditionLines(ready, ['wind', 'weather', 'altitude', 'crew']).map(plainText) : [];
}

/** Stages with their tests. */
export function stageParts(input: PlanInput, tests: readonly PlannedTest[]): StagePart[] {
  const { program, status } = input;
  const shared = new Set([...sharedStops(tests), ...sharedConditions(tests)].map((one) => one.text));
  return program.stages
    .filter((stage) => stage.tests.length > 0)
    .map(({ stage, title }) => {
      const own = tests.filter(({ planned }) => planned.stage === stage);
      const outings = program.outings.filter((one) => one.stage === stage);
      const gate = program.gates.find((one) => one.before === stage && one.after !== stage);
      return {
        title,
        about: `${count(own.length, 'test')} in ${count(outings.length, outings.every((one) => one.kind === 'flight') ? 'flight' : 'session')}.`,
        gate: gate ? `Begins only after gate ${gate.id}, ${lower(gate.title)}.` : '',
        tests: own.map((one) => testPart(one, program, shared, status?.get(one.planned.id) ?? 'planned')),
      };
    });
}

function testPart(
  test: PlannedTest,
  program: Program,
  shared: ReadonlySet<string>,
  state: string,
): StagePart['tests'][number] {
  const { planned, ready } = test;
  return {
    position: planned.position,
    title: `${planned.title}${planned.own ? ' (own test)' : ''}`,
    aim: planned.purpose,
    because: withoutPaths(planned.because, planned.paths),
    why: planned.why,
    outing: [outingWords(planned, program), minutesInWords(planned.flightMinutes + planned.groundMinutes)].join(', '),
    shown: (ready?.pass ?? []).map(({ line, mark }) => `${sentence(line.text)}${mark === 'practice' ? ' *' : ''}`),
    stops: stopsOf(test).filter((text) => !shared.has(text)),
    conditions: conditionsOf(test).filter((text) => !shared.has(text)),
    hazards: (ready?.hazards ?? []).map(({ hazard, mitigation }) => `${hazard.text}: ${mitigation.text}`),
    missing: listInWords(planned.missing.map((one) => one.meaning)),
    standing: state === 'planned' ? '' : state,
  };
}

/** A reason without the names of fields: on paper they lead nowhere. */
export function withoutPaths(reason: string, paths: readonly string[]): string {
  return paths.reduce((words, path) => words.replaceAll(` (${path})`, ''), reason);
}

function outingWords(planned: ProgramTest, program: Program): string {
  const outings = program.outings.filter((one) => planned.outings.includes(one.number));
  const flights = outings.flatMap((one) => one.flight ?? []);
  if (flights.length > 0) return `Flight ${rangesInWords(flights)}`;
  return outings[0]?.kind === 'shop' ? 'In the shop' : 'On the ground';
}

/** Sources behind what counts as shown and behind the tests, each once, by how far they were read. */
export function sourceGroups(tests: readonly PlannedTest[]): { title: string; says: string[] }[] {
  const marks = new Map<string, Set<string>>();
  for (const { ready } of tests) {
    const behind = ready?.pass.map(({ source, mark }) => ({ says: source, mark })) ?? [];
    for (const { says, mark } of [...(ready?.sources ?? []), ...behind]) {
      marks.set(mark, (marks.get(mark) ?? new Set()).add(says));
    }
  }
  return Object.entries(MARKS).flatMap(([mark, title]) => {
    const says = [...(marks.get(mark) ?? [])].sort();
    return says.length === 0 ? [] : [{ title, says }];
  });
}

/** What is common practice has no document to name; it is marked where it stands. */
const MARKS: Record<string, string> = {
  read: 'Read for this catalogue',
  memory: 'From memory, to be looked up before anything rests on it',
};

/** Numbers still missing, with the tests that wait for them. */
export function missingRows(tests: readonly PlannedTest[]): { what: string; tests: string }[] {
  const byMeaning = new Map<string, number[]>();
  for (const { planned } of tests) {
    for (const { meaning } of planned.missing) {
      byMeaning.set(meaning, [...(byMeaning.get(meaning) ?? []), planned.position]);
    }
  }
  return [...byMeaning].map(([meaning, positions]) => ({ what: sentence(meaning), tests: rangesInWords(positions) }));
}

/** `3 to 6, 9`: whole numbers in rising order, runs of three and more shortened. */
export function rangesInWords(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const number of sorted) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .flatMap(([from, to]) => (to - from >= 2 ? [`${from} to ${to}`] : from === to ? [`${from}`] : [`${from}`, `${to}`]))
    .join(', ');
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
