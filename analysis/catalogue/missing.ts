/**
 * What a card lacks, without preparing the whole card: the references of each test are listed once, with the condition
 * their line stands under, and answered per airplane. The program asks this of every test.
 */
import type { Airplane } from '../airplane/index.ts';
import type { Condition } from './condition.ts';
import { type Facts, factsFor, holds } from './condition-words.ts';
import type { Known } from './derived.ts';
import { type MissingNumber, resolveReference } from './reference.ts';
import type { CatalogueTest, Line, Text } from './test.ts';

interface Use {
  path: string;
  under: readonly Condition[];
}

const USES = new WeakMap<CatalogueTest, readonly Use[]>();

/**
 * Numbers a test's card needs and the description lacks.
 * @param test the test, object
 * @param airplane the description, object
 * @param known accepted results so far, object
 * @param facts facts of the airplane where they are at hand, map
 * @returns each missing number once, in the order of the card
 */
export function missingFor(
  test: CatalogueTest,
  airplane: Airplane,
  known: Known = {},
  facts: Facts = factsFor(airplane),
): MissingNumber[] {
  const found = new Map<string, MissingNumber>();
  for (const { path, under } of usesOf(test)) {
    if (found.has(path) || !under.every((condition) => holds(condition, facts))) continue;
    const resolved = resolveReference(path, airplane, known);
    if (resolved.kind === 'missing') found.set(path, { path, meaning: resolved.meaning });
  }
  return [...found.values()];
}

/**
 * Reference paths a test may use, whatever the airplane.
 * @param test the test, object
 * @returns paths, each once
 */
export function referencesOf(test: CatalogueTest): string[] {
  return [...new Set(usesOf(test).map((use) => use.path))];
}

function usesOf(test: CatalogueTest): readonly Use[] {
  const known = USES.get(test);
  if (known) return known;
  const lines = [...test.setup, ...test.steps, ...test.after, ...test.stop, ...test.action];
  const texts = [
    ...Object.values(test.conditions).flatMap((text) => (text === undefined ? [] : usesIn(text, []))),
    ...lines.flatMap(usesInLine),
    ...test.pass.flatMap((one) => usesIn(one.text, one.when ? [one.when] : [])),
    ...test.hazards.flatMap((one) =>
      [one.hazard, one.mitigation].flatMap((text) => usesIn(text, one.when ? [one.when] : [])),
    ),
  ];
  USES.set(test, texts);
  return texts;
}

function usesInLine(line: Line): Use[] {
  if (typeof line === 'string' || Array.isArray(line)) return usesIn(line, []);
  return 'when' in line ? usesIn(line.text, [line.when]) : [];
}

function usesIn(text: Text, under: readonly Condition[]): Use[] {
  if (typeof text === 'string') return pathsIn(text).map((path) => ({ path, under }));
  return text.flatMap((piece) =>
    typeof piece === 'string' ? usesIn(piece, under) : usesIn(piece.text, [...under, piece.when]),
  );
}

function pathsIn(text: string): string[] {
  return [...text.matchAll(/\{\{(\S+) ([^}\s]+)[^}]*\}\}/g)].flatMap(([, kind, path]) =>
    kind === 'show' || path === undefined ? [] : [path],
  );
}
