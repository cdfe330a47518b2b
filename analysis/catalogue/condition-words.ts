/** Judging a condition: whether it holds for an airplane, in words a builder reads, and the paths it was read from. */
import { type Airplane, FACTS, type Fact, type FactValue, factsOf } from '../airplane/index.ts';
import type { Condition } from './condition.ts';

export interface Judgement {
  holds: boolean;
  /** completes "the airplane ...", with the configuration path in brackets */
  words: string;
  /** configuration paths that decide it */
  paths: string[];
}

export type Facts = ReadonlyMap<string, FactValue>;

/** descriptions are never changed in place: a change is a new revision */
const FACTS_OF = new WeakMap<Airplane, Facts>();

const BY_NAME = new Map<string, Fact>(FACTS.map((fact) => [fact.name, fact]));

/**
 * Whether a condition holds.
 * @param condition the condition, or undefined for "always"
 * @param facts facts of the airplane, map from name to value
 * @returns true when it holds
 */
export function holds(condition: Condition | undefined, facts: Facts): boolean {
  if (condition === undefined) return true;
  if ('all' in condition) return condition.all.every((one) => holds(one, facts));
  if ('any' in condition) return condition.any.some((one) => holds(one, facts));
  if ('not' in condition) return !holds(condition.not, facts);
  const value = facts.get(condition.fact);
  if (value === undefined) return false;
  if ('is' in condition) return value === condition.is;
  if ('atLeast' in condition) return typeof value === 'number' && value >= condition.atLeast;
  return value !== false && value !== 0;
}

/**
 * A condition judged, with the reason in words.
 * @param condition the condition, or undefined for "always"
 * @param facts facts of the airplane, map from name to value
 * @returns whether it holds, why, and the configuration paths that decide it
 */
export function judge(condition: Condition | undefined, facts: Facts): Judgement {
  if (condition === undefined) return { holds: true, words: '', paths: [] };
  if ('all' in condition) return joined(condition.all, facts, true);
  if ('any' in condition) return joined(condition.any, facts, false);
  if ('not' in condition) {
    const inner = judge(condition.not, facts);
    return { ...inner, holds: !inner.holds };
  }
  return leaf(condition, facts);
}

/**
 * The facts of an airplane as the judgements take them.
 * @param airplane the description, object
 * @returns map from fact name to value
 */
export function factsFor(airplane: Airplane): Facts {
  const known = FACTS_OF.get(airplane);
  if (known) return known;
  const facts = factsOf(airplane);
  FACTS_OF.set(airplane, facts);
  return facts;
}

/** Configuration paths a condition reads. */
export function pathsOf(condition: Condition | undefined): string[] {
  if (condition === undefined) return [];
  if ('all' in condition) return unique(condition.all.flatMap(pathsOf));
  if ('any' in condition) return unique(condition.any.flatMap(pathsOf));
  if ('not' in condition) return pathsOf(condition.not);
  const fact = BY_NAME.get(condition.fact);
  return fact ? [fact.path] : [];
}

/** For all: those that fail decide when it fails. For any: those that hold decide when it holds. */
function joined(conditions: readonly Condition[], facts: Facts, all: boolean): Judgement {
  const parts = conditions.map((one) => judge(one, facts));
  const result = all ? parts.every((one) => one.holds) : parts.some((one) => one.holds);
  const deciding = parts.filter((one) => one.holds === result);
  return {
    holds: result,
    words: unique(deciding.map((one) => one.words)).join(' and '),
    paths: unique(deciding.flatMap((one) => one.paths)),
  };
}

function leaf(condition: Condition & { fact: string }, facts: Facts): Judgement {
  const fact = BY_NAME.get(condition.fact);
  const value = facts.get(condition.fact);
  const result = holds(condition, facts);
  if (!fact || value === undefined) return { holds: result, words: `is not described (${condition.fact})`, paths: [] };
  const plain = value !== false && value !== 0 ? fact.has : fact.lacks;
  const words = fact.says && value !== false ? fact.says(value) : plain;
  return { holds: result, words: `${words} (${fact.path})`, paths: [fact.path] };
}

function unique(list: readonly string[]): string[] {
  return [...new Set(list)];
}
