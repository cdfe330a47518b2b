/** Names of files as people gave them, made fit to be shown: no folders, no control characters, not too long. */

const LONGEST = 80;

/**
 * The part of a name that is shown.
 * @param given any text
 * @returns its last part without control and direction characters, at most 80 long; `unnamed` when nothing is left
 */
export function shownName(given: string): string {
  const last = given.split(/[/\\]/).at(-1) ?? '';
  // control characters, direction overrides and surrogates without a partner could make a name look like another
  const plain = last
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '')
    .trim();
  const short = plain.length > LONGEST ? `${plain.slice(0, LONGEST - 10)}…${plain.slice(-9)}` : plain;
  return /^\.*$/.test(short) ? 'unnamed' : short;
}

/**
 * A name that is not taken yet.
 * @param name a name fit to be shown
 * @param taken names in use
 * @returns the name, or the name with a number before its ending
 */
export function unusedName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  const [, stem = name, ending = ''] = /^(.*?)(\.[^.]{1,8})?$/s.exec(name) ?? [];
  for (let number = 2; ; number += 1) {
    const candidate = `${stem} (${number})${ending}`;
    if (!taken.has(candidate)) return candidate;
  }
}
