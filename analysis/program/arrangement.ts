/** Outings as lists of parts: what a person moves, what a day changes, and what two arrangements differ in. */
import type { Outing, Part, Program } from './program.ts';

export type Arrangement = readonly (readonly Part[])[];

/** Difference between two arrangements, said of one outing. */
export interface ArrangementChange {
  what: 'kept' | 'changed' | 'new' | 'gone' | 'shifted';
  /** title in the plan before and after; null where there is none */
  before: string | null;
  after: string | null;
  words: string;
}

/**
 * The arrangement of a program.
 * @param program the program, object
 * @returns its outings as lists of parts
 */
export function arrangementOf(program: Program): Part[][] {
  return program.outings.map((outing) => outing.parts.map((part) => ({ ...part })));
}

/**
 * What changed between two plans, outing by outing.
 * @param before the plan as it was printed, object
 * @param after the plan as it is now, object
 * @returns changes; outings that kept their content and their turn are left out
 */
export function compareArrangements(before: Program, after: Program): ArrangementChange[] {
  const old = new Map(before.outings.map((outing) => [keyOfOuting(outing), outing]));
  const now = new Map(after.outings.map((outing) => [keyOfOuting(outing), outing]));
  const titles = titlesIn(before, after);
  const turns = turnsKept([...old.keys()], [...now.keys()]);
  const changes: ArrangementChange[] = [];
  const matched = new Set<string>();
  for (const [key, outing] of now) {
    const same = old.get(key);
    if (same) {
      if (turns.has(key)) continue;
      changes.push({
        what: 'shifted',
        before: same.title,
        after: outing.title,
        words: `“${outing.title}” keeps its content and changes its turn`,
      });
      continue;
    }
    const ancestor = before.outings.find(
      (one) => !now.has(keyOfOuting(one)) && !matched.has(keyOfOuting(one)) && shares(one, outing),
    );
    if (ancestor) {
      matched.add(keyOfOuting(ancestor));
      changes.push({
        what: 'changed',
        before: ancestor.title,
        after: outing.title,
        words: changeWords(ancestor, outing, titles),
      });
    } else {
      changes.push({ what: 'new', before: null, after: outing.title, words: `“${outing.title}” is new` });
    }
  }
  for (const [key, outing] of old) {
    if (now.has(key) || matched.has(key)) continue;
    changes.push({ what: 'gone', before: outing.title, after: null, words: `“${outing.title}” falls away` });
  }
  return changes;
}

/** Same parts, same outing, whatever its number. */
export function keyOfOuting(outing: Pick<Outing, 'parts'>): string {
  return outing.parts
    .map((part) => `${part.test}#${part.part}`)
    .sort()
    .join(' ');
}

function shares(one: Outing, other: Outing): boolean {
  const parts = new Set(one.parts.map((part) => `${part.test}#${part.part}`));
  return other.parts.some((part) => parts.has(`${part.test}#${part.part}`));
}

function changeWords(before: Outing, after: Outing, titles: ReadonlyMap<string, string>): string {
  const named = (tests: readonly string[]) => tests.map((test) => `“${titles.get(test) ?? test}”`).join(', ');
  const gone = before.tests.filter((test) => !after.tests.includes(test));
  const come = after.tests.filter((test) => !before.tests.includes(test));
  const parts = [
    ...(come.length > 0 ? [`gains ${named(come)}`] : []),
    ...(gone.length > 0 ? [`gives up ${named(gone)}`] : []),
  ];
  return `“${before.title}” ${parts.join(' and ') || 'changes its order'}`;
}

function titlesIn(...programs: Program[]): Map<string, string> {
  return new Map(
    programs.flatMap(({ stages }) =>
      stages.flatMap(({ tests }) => tests.map((test) => [test.id, test.title] as const)),
    ),
  );
}

/** Outings that stand in the same turn relative to each other: a longest common run. */
function turnsKept(old: readonly string[], now: readonly string[]): Set<string> {
  const shared = old.filter((key) => now.includes(key));
  const places = shared.map((key) => now.indexOf(key));
  const best: number[][] = [];
  for (const [i, place] of places.entries()) {
    let longest: number[] = [];
    for (let j = 0; j < i; j += 1) {
      const before = best[j] ?? [];
      if ((places[j] ?? 0) < place && before.length > longest.length) longest = before;
    }
    best.push([...longest, i]);
  }
  const run = best.reduce<number[]>((a, b) => (b.length > a.length ? b : a), []);
  return new Set(run.flatMap((i) => shared[i] ?? []));
}
