/**
 * A person's own tests: the same shape as the catalogue's, read at the border, refused with the chain shown where they
 * go in a circle, need a later stage, or use a product that nothing makes.
 */
import * as z from 'zod';
import { type Problem, problem } from '../remarks/index.ts';
import { CATALOGUE } from './catalogue.ts';
import { LOAD_STEPS } from './load-steps.ts';
import { referencesOf } from './missing.ts';
import { referenceOf } from './reference.ts';
import { STAGES } from './stage.ts';
import { type CatalogueTest, testSchema } from './test.ts';

export interface OwnTests {
  tests: CatalogueTest[];
  problems: Problem[];
}

/**
 * A person's own tests from parsed JSON.
 * @param json an array of tests, anything
 * @param among the tests they join, list
 * @returns the tests, or the problems and no tests
 */
export function readOwnTests(json: unknown, among: readonly CatalogueTest[] = CATALOGUE): OwnTests {
  const read = z.array(testSchema).safeParse(json);
  if (!read.success) {
    const problems = read.error.issues.map((issue) => {
      const field = issue.path.map(String).join('.');
      return problem('bad-catalogue', `own tests: ${field || 'the whole'}: ${issue.message}`, { field });
    });
    return { tests: [], problems };
  }
  const problems = problemsOf(read.data, among);
  return { tests: problems.length === 0 ? read.data : [], problems };
}

function problemsOf(own: readonly CatalogueTest[], among: readonly CatalogueTest[]): Problem[] {
  const all = [...among, ...own];
  const byId = new Map(all.map((test) => [test.id, test]));
  const names = [...duplicates(all)].map((id) =>
    problem('bad-catalogue', `own tests: the name ${id} is taken`, { field: 'id' }),
  );
  const wrong = own.flatMap((test) => [...unknownNeeds(test, byId), ...noProducer(test, all), ...unknownNumbers(test)]);
  const bad = [...names, ...wrong];
  return bad.length > 0 ? bad : [...circles(own, all), ...laterStage(own, all)];
}

function duplicates(all: readonly CatalogueTest[]): Set<string> {
  const seen = new Set<string>();
  return new Set(all.map((test) => test.id).filter((id) => seen.has(id) || !seen.add(id)));
}

function unknownNeeds(test: CatalogueTest, byId: ReadonlyMap<string, CatalogueTest>): Problem[] {
  return test.needs
    .filter((need) => !byId.has(need))
    .map((need) => problem('bad-order', `${test.id} needs ${need}, which is no test`, { field: `${test.id}.needs` }));
}

function noProducer(test: CatalogueTest, all: readonly CatalogueTest[]): Problem[] {
  return test.consumes
    .filter((product) => !all.some((one) => one.produces.includes(product)))
    .map((product) =>
      problem('bad-order', `${test.id} uses "${product}", which no test makes: ${test.id} ← ${product} ← nothing`, {
        field: `${test.id}.consumes`,
      }),
    );
}

function unknownNumbers(test: CatalogueTest): Problem[] {
  return referencesOf(test)
    .filter((path) => referenceOf(path) === undefined)
    .map((path) =>
      problem('bad-catalogue', `${test.id} names a number ${path}, which is not in the list`, { field: path }),
    );
}

/** What each test waits for: its needs, whoever makes what it uses, and the step its load builds on. */
function waits(all: readonly CatalogueTest[]): Map<string, string[]> {
  const makers = new Map<string, string[]>();
  for (const test of all) {
    for (const product of test.produces) makers.set(product, [...(makers.get(product) ?? []), test.id]);
  }
  return new Map(
    all.map((test) => [
      test.id,
      [...test.needs, ...stepBefore(test), ...test.consumes.flatMap((product) => makers.get(product) ?? [])],
    ]),
  );
}

function stepBefore({ id, planning }: CatalogueTest): string[] {
  const step = LOAD_STEPS[planning.load];
  return step === undefined || step === id ? [] : [step];
}

function circles(own: readonly CatalogueTest[], all: readonly CatalogueTest[]): Problem[] {
  const edges = waits(all);
  const found = new Map<string, Problem>();
  for (const test of own) {
    const chain = circleFrom(test.id, edges);
    if (!chain) continue;
    const key = [...new Set(chain)].sort().join(' ');
    if (found.has(key)) continue;
    found.set(
      key,
      problem('bad-order', `tests wait for each other: ${chain.join(' ← ')}`, { field: `${test.id}.needs` }),
    );
  }
  return [...found.values()];
}

/** A chain that leads from a test back to itself, first and last the same. */
function circleFrom(start: string, edges: ReadonlyMap<string, readonly string[]>): string[] | null {
  const visited = new Set<string>();
  const walk = (id: string, path: string[]): string[] | null => {
    for (const next of edges.get(id) ?? []) {
      if (next === start) return [...path, start];
      if (visited.has(next)) continue;
      visited.add(next);
      const chain = walk(next, [...path, next]);
      if (chain) return chain;
    }
    return null;
  };
  return walk(start, [start]);
}

function laterStage(own: readonly CatalogueTest[], all: readonly CatalogueTest[]): Problem[] {
  const edges = waits(all);
  const byId = new Map(all.map((test) => [test.id, test]));
  const mine = new Set(own.map((test) => test.id));
  const rank = (test: CatalogueTest) => STAGES.indexOf(test.stage);
  return all.flatMap((test) =>
    (edges.get(test.id) ?? []).flatMap((need) => {
      const before = byId.get(need);
      if (!before || rank(before) <= rank(test) || !(mine.has(test.id) || mine.has(need))) return [];
      const chain = `${test.id} (${test.stage}) ← ${need} (${before.stage})`;
      return [problem('bad-order', `a test waits for one of a later stage: ${chain}`, { field: `${test.id}.needs` })];
    }),
  );
}
