/**
 * Whether a result still stands. While a reduction runs, each configuration value it reads is noted by path; when one
 * of them differs now, the result is stale, and the reason names it. Nothing has to be kept in step by hand.
 */

export interface Traced<T> {
  /** reads like the original */
  watched: T;
  /** paths read so far, sorted */
  reads(): string[];
}

/**
 * Watch what is read of a plain JSON object.
 * @param original objects, arrays and plain values
 */
export function traceReads<T extends object>(original: T): Traced<T> {
  const seen = new Set<string>();
  const wrap = <O extends object>(object: O, path: string): O =>
    new Proxy(object, {
      get(target, key, receiver) {
        const value: unknown = Reflect.get(target, key, receiver);
        if (typeof key === 'symbol' || typeof value === 'function') return value;
        const here = path === '' ? key : `${path}.${key}`;
        if (typeof value === 'object' && value !== null) return wrap(value, here);
        seen.add(here);
        return value;
      },
      // whoever lists the keys depends on the whole of it
      ownKeys(target) {
        if (path !== '') seen.add(path);
        return Reflect.ownKeys(target);
      },
    });
  return { watched: wrap(original, ''), reads: () => [...seen].sort() };
}

/**
 * The value at a path.
 * @param object plain JSON
 * @param path names joined by points
 * @returns the value, undefined where there is none
 */
export function valueAt(object: unknown, path: string): unknown {
  let here = object;
  for (const name of path.split('.')) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = Reflect.get(here, name);
  }
  return here;
}

/**
 * Paths whose values differ between two descriptions, in the words of a person: `limits.coolant.caution`, not its SI.
 * @param reads paths a reduction read
 * @param before description it read
 * @param now description now
 */
export function changedPaths(reads: readonly string[], before: unknown, now: unknown): string[] {
  const changed = reads.filter((path) => JSON.stringify(valueAt(before, path)) !== JSON.stringify(valueAt(now, path)));
  return [...new Set(changed.map((path) => path.replace(/\.(si|value|unit|u95|status|source)$/, '')))];
}
