/** One line of the head of a file into cells, for deciding how the file is built. Rows proper are read elsewhere. */

export type Delimiter = ',' | ';' | '\t' | '|' | 'spaces' | 'fixed';

/**
 * Cells of a line.
 * @param line a line without its end, text
 * @param delimiter what separates cells, text
 * @param cuts first character of each column after the first, for fixed columns, count
 * @returns the cells, quotes taken off; one that is never closed stays in its cell
 */
export function splitLine(line: string, delimiter: Delimiter, cuts: readonly number[] = []): string[] {
  if (delimiter === 'spaces') return line.trim().split(/\s+/);
  if (delimiter === 'fixed') return cutLine(line, cuts);
  if (!line.includes('"')) return line.split(delimiter);
  const cells: string[] = [];
  let at = 0;
  while (at <= line.length) {
    if (line[at] === '"' && line.indexOf('"', at + 1) > 0) {
      let cell = '';
      let i = at + 1;
      for (; i < line.length; i++) {
        if (line[i] !== '"') cell += line[i];
        else if (line[i + 1] === '"') {
          cell += '"';
          i++;
        } else break;
      }
      const next = line.indexOf(delimiter, i);
      cells.push(cell + (next < 0 ? line.slice(i + 1) : line.slice(i + 1, next)).trim());
      if (next < 0) return cells;
      at = next + 1;
    } else {
      const next = line.indexOf(delimiter, at);
      cells.push(next < 0 ? line.slice(at) : line.slice(at, next));
      if (next < 0) return cells;
      at = next + 1;
    }
  }
  cells.push('');
  return cells;
}

/**
 * Cells of a line with fixed columns.
 * @param line a line, text
 * @param cuts first character of each column after the first, count
 * @returns the cells, trimmed
 */
export function cutLine(line: string, cuts: readonly number[]): string[] {
  const cells: string[] = [];
  let from = 0;
  for (const cut of cuts) {
    cells.push(line.slice(from, cut).trim());
    from = cut;
  }
  cells.push(line.slice(from).trim());
  return cells;
}
