/** Looking into a parsed description by path (`limits.coolant.caution`), and making a changed copy of it. */

export type Json = Record<string, unknown>;

/** An object that is not a list. */
export function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What stands at a path, or undefined. */
export function valueAt(json: unknown, path: string): unknown {
  let at: unknown = json;
  for (const key of path.split('.')) {
    if (Array.isArray(at)) at = at[Number(key)];
    else if (isObject(at) && Object.hasOwn(at, key)) at = at[key];
    else return undefined;
  }
  return at;
}

/** A copy with another value at a path; undefined takes the key away. What lies on the way is made where missing. */
export function withValue(json: unknown, path: string, value: unknown): unknown {
  const [key = '', ...rest] = path.split('.');
  const inner = rest.length === 0 ? value : withValue(valueAt(json, key), rest.join('.'), value);
  if (Array.isArray(json)) {
    const copy = [...json];
    if (inner === undefined) copy.splice(Number(key), 1);
    else copy[Number(key)] = inner;
    return copy;
  }
  const entries = Object.entries(isObject(json) ? json : {}).filter(([one]) => one !== key);
  if (inner !== undefined) entries.push([key, inner]);
  // a key from a form is data, never the prototype of what we build
  return Object.fromEntries(entries.filter(([one]) => one !== '__proto__'));
}
