/** Two revisions of a description compared: what changed, where, from what to what. */
import type { Airplane } from './configuration.ts';

export interface Change {
  /** dotted path; places of a list by their name where they have one, else by number */
  path: string;
  before: unknown;
  after: unknown;
  /** `limits.coolant.caution: 105 degC, now 104 degC` */
  words: string;
}

/**
 * What differs between two descriptions.
 * @param before the earlier description, object
 * @param after the later description, object
 * @returns changes in the order of the description, a stated number as one change
 */
export function compareRevisions(before: Airplane, after: Airplane): Change[] {
  return changesAt('', before, after);
}

function changesAt(path: string, before: unknown, after: unknown): Change[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (isPart(before) && isPart(after)) {
    const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return names.flatMap((name) => changesAt(path === '' ? name : `${path}.${name}`, before[name], after[name]));
  }
  if (Array.isArray(before) && Array.isArray(after) && [...before, ...after].every(isNamed)) {
    const [one, other] = [byName(before), byName(after)];
    return [...new Set([...one.keys(), ...other.keys()])].flatMap((name) =>
      changesAt(`${path}.${name}`, one.get(name), other.get(name)),
    );
  }
  return [{ path, before, after, words: `${path}: ${shown(before)}, now ${shown(after)}` }];
}

/** A group of fields; a stated number counts as one value. */
function isPart(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) && !('value' in value && 'unit' in value);
}

function isNamed(value: unknown): value is { name: string } {
  return typeof value === 'object' && value !== null && 'name' in value && typeof value.name === 'string';
}

function byName(list: readonly unknown[]): Map<string, unknown> {
  return new Map(list.flatMap((one) => (isNamed(one) ? [[one.name, one] as const] : [])));
}

function shown(value: unknown): string {
  if (value === undefined) return 'not stated';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (typeof value === 'object' && value !== null && 'value' in value && 'unit' in value) {
    return `${String(value.value)} ${String(value.unit)}`;
  }
  return Array.isArray(value) ? `${value.length} entries` : 'as entered';
}
