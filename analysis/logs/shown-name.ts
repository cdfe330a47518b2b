/** The part of a file's name that may be shown: no folders, nothing unseen, no endless length. */

/** control characters, those that turn or hide text, halves of letters: they make one name look like another */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

export interface ShownName {
  name: string;
  /** true where the name as given held more than that */
  changed: boolean;
}

/**
 * The plain part of a file name.
 * @param given the name as it came, text
 * @returns what may be shown
 */
export function shownName(given: string): ShownName {
  const last = given.split(/[\\/]/).at(-1) ?? '';
  const plain = last.replace(UNSEEN, '').trim().slice(0, 120);
  const name = plain === '' || plain === '.' || plain === '..' ? 'log' : plain;
  return { name, changed: name !== given };
}
