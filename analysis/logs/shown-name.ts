/** The part of a file's name that may be shown: no folders, no control characters, no endless length. */

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
  const plain = [...last]
    .filter((letter) => letter >= ' ' && letter !== '\u007f' && !/[\u202a-\u202e\u2066-\u2069]/.test(letter))
    .join('')
    .trim()
    .slice(0, 120);
  const name = plain === '' || plain === '.' || plain === '..' ? 'log' : plain;
  return { name, changed: name !== given };
}
