/** Records of a piece with quotes in it. A quote that a fault put there opens nothing: its line is a line like others. */
import Papa from 'papaparse';
import { looksLikeReadings } from '../text/head-lines.ts';
import { type Delimiter, splitLine } from '../text/split-line.ts';

export interface QuotedRecord {
  cells: string[];
  /** lines of the file it stands on, count */
  lines: number;
}

/** So often a piece is parsed anew behind a stray quote; then its lines are taken one by one. */
const MOST_PARSED_ANEW = 40;

/**
 * Records of whole lines.
 * @param piece lines, each with its end `\n`, text
 * @param delimiter what separates cells, text
 * @returns the records, in order
 */
export function quotedRecords(piece: string, delimiter: Delimiter): QuotedRecord[] {
  const lines = piece.split('\n');
  lines.pop();
  const records: QuotedRecord[] = [];
  let parsed = 0;
  for (let from = 0; from < lines.length; ) {
    if (parsed++ > MOST_PARSED_ANEW) {
      for (const line of lines.slice(from)) records.push({ cells: literal(line, delimiter), lines: 1 });
      break;
    }
    from = takeUntilStray(lines, from, delimiter, records);
  }
  return records;
}

/** Parses from a line on, up to and with the first line whose quotes are a fault; gives the line to go on with. */
function takeUntilStray(lines: readonly string[], from: number, delimiter: Delimiter, records: QuotedRecord[]): number {
  const rest = from === 0 ? lines.join('\n') : lines.slice(from).join('\n');
  const { data, errors } = Papa.parse<string[]>(rest, { delimiter, newline: '\n', quoteChar: '"' });
  const faulty = new Set(errors.flatMap(({ type, row }) => (type === 'Quotes' && row !== undefined ? [row] : [])));
  let line = from;
  for (const [k, cells] of data.entries()) {
    const count = cells.reduce((sum, cell) => sum + (cell.includes('\n') ? cell.split('\n').length - 1 : 0), 1);
    const swallowed = count > 1 && lines.slice(line + 1, line + count).some(looksLikeReadings);
    if (faulty.has(k) || swallowed) {
      records.push({ cells: literal(lines[line] ?? '', delimiter), lines: 1 });
      return line + 1;
    }
    records.push({ cells, lines: count });
    line += count;
  }
  return lines.length;
}

/** Cells between delimiters, quotes kept where they do not close about a whole cell. */
function literal(line: string, delimiter: Delimiter): string[] {
  if (delimiter === 'spaces' || delimiter === 'fixed') return splitLine(line, delimiter);
  return line.split(delimiter).map((cell) => /^\s*"([^"]*)"\s*$/.exec(cell)?.[1] ?? cell);
}
