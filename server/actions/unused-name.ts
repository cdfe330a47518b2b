/**
 * A name that no other log of a book has.
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
