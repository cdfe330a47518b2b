/** Lists, counts and names as a sentence says them. */

/** `a, b and c`; nothing for an empty list. */
export function listInWords(items: readonly string[], last = 'and'): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}

/** `1 test`, `3 tests`. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** First letter large, the rest untouched. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const WHOLE: Record<string, string> = {
  u95: 'U95',
  'outside-air-temperature': 'outside air temperature',
  'distance-to-15m': 'distance to 15 m',
  'time-to-limit-early': 'time to limit, early end',
  'share-never': 'chance of never reaching it',
  mac: 'MAC',
};

/**
 * A kebab-case name of the glossary or of a result, in words.
 * @param name such as `cylinder-head-temperature#3`, text
 * @returns such as `Cylinder head temperature 3`
 */
export function nameInWords(name: string): string {
  const [base = name, index] = name.split('#');
  const words = WHOLE[base] ?? base.replaceAll('-', ' ').replace(/\bu95\b/g, 'U95');
  return sentence(index === undefined ? words : `${words} ${index}`);
}
