/** The head of a file as lines, with their numbers; a quoted line break does not end a line. */

export interface HeadLine {
  text: string;
  /** line of the file, from 1 */
  line: number;
}

/**
 * Lines of the head of a file.
 * @param text the head as text
 * @param complete true when the head is the whole file, so that its last line is whole
 * @returns the lines that are whole
 */
export function headLines(text: string, complete: boolean): HeadLine[] {
  const raw = text.split(/\r\n|\n|\r/);
  if (!complete || raw.at(-1) === '') raw.pop();
  const lines: HeadLine[] = [];
  for (let i = 0; i < raw.length; i++) {
    const line = i + 1;
    let whole = raw[i] ?? '';
    // An odd count of quotes, the first at the start of a cell, opens a cell that goes on in the next line.
    let joined = 0;
    while (opensQuote(whole) && joined < 8 && i + 1 < raw.length && !looksLikeReadings(raw[i + 1] ?? '')) {
      whole = `${whole}\n${raw[i + 1] ?? ''}`;
      i++;
      joined++;
    }
    if (joined > 0 && opensQuote(whole)) {
      i -= joined;
      whole = raw[i] ?? '';
    }
    lines.push({ text: whole, line });
  }
  return lines;
}

/**
 * True where a line is a row of numbers: a quote open before it was put there by a fault.
 * @param line a line without its end, text
 * @returns whether it looks so
 */
export function looksLikeReadings(line: string): boolean {
  const cells = line.split(/[,;\t|]/);
  const numbers = cells.filter((cell) => /^\s*"?[+-]?\d[\d.:TZ-]*"?\s*$/.test(cell)).length;
  return numbers >= 2 && numbers * 2 >= cells.length;
}

function opensQuote(text: string): boolean {
  if (!text.includes('"')) return false;
  let quotes = 0;
  for (const letter of text) if (letter === '"') quotes++;
  return quotes % 2 === 1 && /(^|[,;\t|])"/.test(text);
}
