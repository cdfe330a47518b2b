/**
 * What a change of the airplane touches: tests that come in or fall away, lines of cards that come or go, numbers that
 * differ, what the change table asks to be repeated, and the results that are stale until it is.
 */
import { type Airplane, type Change, type ChangedFact, changedFacts, compareRevisions } from '../airplane/index.ts';
import {
  applicable,
  CATALOGUE,
  type CatalogueTest,
  linesFor,
  type PreparedTest,
  REPEAT_AFTER_CHANGE,
  repeatsFor,
  wordsFor,
} from '../catalogue/index.ts';

export interface TouchedTest {
  test: string;
  title: string;
  /** lines its card loses and gains, as printed */
  lost: string[];
  gained: string[];
}

/** A result on record, as far as a change needs to know it. */
export interface StandingResult {
  id: string;
  /** tests it answers */
  tests: readonly string[];
}

export interface Touched {
  changes: Change[];
  facts: ChangedFact[];
  /** tests that apply no longer, or newly, with the reason */
  removed: { test: string; title: string; because: string }[];
  added: { test: string; title: string; because: string }[];
  /** cards whose lines differ */
  cards: TouchedTest[];
  /** lines of the change table the change belongs to */
  rows: { id: string; changed: string }[];
  /** tests to repeat that apply, in catalogue order */
  repeat: { test: string; title: string; because: string }[];
  /** results stale until repeated, each with its reason */
  stale: { id: string; because: string }[];
}

/**
 * What the step from one revision to the next touches.
 * @param before the earlier description, object
 * @param after the later description, object
 * @param results results on record, list
 * @param ownTests tests of the person's own, list
 * @returns changes, tests, cards, repeats and stale results
 */
export function touchedBy(
  before: Airplane,
  after: Airplane,
  results: readonly StandingResult[] = [],
  ownTests: readonly CatalogueTest[] = [],
): Touched {
  const tests = [...CATALOGUE, ...ownTests];
  const changes = compareRevisions(before, after);
  const rows = REPEAT_AFTER_CHANGE.filter((row) => changes.some((change) => repeatsFor(change.path).includes(row)));
  const removed: Touched['removed'] = [];
  const added: Touched['added'] = [];
  const cards: TouchedTest[] = [];
  for (const test of tests) {
    const [was, is] = [applicable(test, before), applicable(test, after)];
    const title = wordsFor(test.title, is.applies ? after : before);
    if (was.applies && !is.applies) removed.push({ test: test.id, title, because: is.because });
    if (!was.applies && is.applies) added.push({ test: test.id, title, because: is.because });
    if (!was.applies || !is.applies) continue;
    const [old, now] = [printedLines(linesFor(test, before)), printedLines(linesFor(test, after))];
    const lost = old.filter((line) => !now.includes(line));
    const gained = now.filter((line) => !old.includes(line));
    if (lost.length > 0 || gained.length > 0) cards.push({ test: test.id, title, lost, gained });
  }
  const repeat = tests
    .filter((test) => applicable(test, after).applies)
    .flatMap((test) => {
      const row = rows.find((one) => one.repeat.includes(test.id));
      return row ? [{ test: test.id, title: wordsFor(test.title, after), because: `${row.changed} changed` }] : [];
    });
  return {
    changes,
    facts: changedFacts(before, after),
    removed,
    added,
    cards,
    rows: rows.map(({ id, changed }) => ({ id, changed })),
    repeat,
    stale: staleResults(results, removed, repeat),
  };
}

function staleResults(
  results: readonly StandingResult[],
  removed: Touched['removed'],
  repeat: Touched['repeat'],
): Touched['stale'] {
  return results.flatMap(({ id, tests }) => {
    const gone = removed.find((one) => tests.includes(one.test));
    if (gone) return [{ id, because: `“${gone.title}” no longer applies: ${gone.because}` }];
    const again = repeat.find((one) => tests.includes(one.test));
    return again ? [{ id, because: `“${again.title}” is to be repeated: ${again.because}` }] : [];
  });
}

/** Everything a card prints for a test, line by line. */
function printedLines(ready: PreparedTest): string[] {
  return [
    ready.title,
    ...[...ready.setup, ...ready.steps, ...ready.after, ...ready.stop, ...ready.action].map((line) => line.text),
    ...ready.conditions.map((one) => `${one.what}: ${one.line.text}`),
    ...ready.pass.map((one) => one.line.text),
    ...ready.hazards.map((one) => `${one.hazard.text}: ${one.mitigation.text}`),
    ...ready.readings.map((one) => `${one.what}, ${one.unit}`),
    ...ready.channels,
  ];
}
