/** Fields that were filled in with usual values, or copied from an invented airplane, until a person confirms them. */
import { isObject, type Json, valueAt, withValue } from '../words/json-path.ts';
import { SECTIONS } from './airplane-words.ts';

/** Paths still to be confirmed, as a description holds them. */
export function toConfirm(json: unknown): string[] {
  const list = valueAt(json, 'toConfirm');
  return Array.isArray(list) ? list.filter((one) => typeof one === 'string') : [];
}

/** Is the field at a path, or the whole it belongs to, still to be confirmed? */
export function isToConfirm(json: unknown, path: string): boolean {
  return toConfirm(json).some((one) => path === one || path.startsWith(`${one}.`));
}

/**
 * A description whose section a person has looked at and saved: nothing in it is left to be confirmed.
 * @param section id in SECTIONS, text
 */
export function withConfirmed(json: unknown, section: string): unknown {
  const keys = SECTIONS.find((one) => one.id === section)?.keys ?? [];
  const before = toConfirm(json);
  const left = before.filter((path) => !keys.some((key) => path === key || path.startsWith(`${key}.`)));
  return left.length === before.length ? json : withValue(json, 'toConfirm', left);
}

/** Parts of a description that belong to one airplane and no other: never copied. */
const ITS_OWN = ['description', 'place', 'plan.program', 'limits.operatingLimitations', 'loading.empty'];

/**
 * A description to start from, copied from an invented airplane: every figure says where it comes from and is to be
 * confirmed; what is that airplane's own is left out.
 * @param demo the invented airplane's description
 * @param own what the person answered: it replaces the copy and needs no confirming
 */
export function copiedAirplane(demo: unknown, own: Json): unknown {
  const bare = ITS_OWN.reduce((json, path) => withValue(json, path, undefined), demo);
  const name = String(valueAt(demo, 'name') ?? 'a demo airplane');
  const copied = withSources(bare, `to be confirmed: copied from the invented ${name}`);
  const asked = Object.entries(own).reduce((json, [path, value]) => withValue(json, path, value), copied);
  const sections = isObject(bare) ? Object.keys(bare).filter((key) => isObject(bare[key]) && key !== 'plan') : [];
  return withValue(withValue(asked, 'invented', undefined), 'toConfirm', [...sections, 'plan']);
}

/** Every stated figure with the source given, nobody's name on it, nothing measured. */
function withSources(json: unknown, source: string): unknown {
  if (Array.isArray(json)) return json.map((one) => withSources(one, source));
  if (!isObject(json)) return json;
  if (typeof json.value === 'number' && typeof json.unit === 'string') {
    const { enteredBy: _, ...kept } = json;
    return { ...kept, source, ...(json.status === undefined ? {} : { status: 'estimated' }) };
  }
  return Object.fromEntries(Object.entries(json).map(([key, value]) => [key, withSources(value, source)]));
}
