/** What the lines above the table say about the whole file: the date, the zone, the rate. */
import { offsetIn, readClockCell } from '../clock/clock-cell.ts';

export interface PreambleFacts {
  /** date of the recording where it cannot be misread, `yyyy-mm-dd` */
  date?: string;
  /** offset from UTC, as a map would give it */
  offset?: string;
  /** rows a second */
  sampleRateHz?: number;
}

const RATE =
  /\b(?:sampl\w*|log\w*|record\w*|data)?\s*(?:rate|frequency|freq)\b\D{0,14}(\d+(?:[.,]\d+)?)\s*(?:hz|\/\s*s\b|per sec|samples)/i;
const INTERVAL =
  /\b(?:interval|period|sample time|time step)\b\D{0,14}(\d+(?:[.,]\d+)?)\s*(ms|msec|s|sec|seconds?)?\b/i;
const ZONE = /\b(?:utc|gmt|tz|time ?zone|offset)\b.{0,16}?([+-]\d{1,2}(?::?\d{2})?)(?!\d)/i;
const IS_UTC = /\b(?:time ?zone|all times|times? (?:are )?in|time base)\b.{0,10}\b(?:utc|gmt|zulu)\b/i;
const DATE_WORD = /\b(date|datum|start|recorded|flight|fecha|data|day)\b/i;

/**
 * Read the preamble.
 * @param lines lines above the header, texts
 * @returns what it says, as far as it says it plainly
 */
export function preambleFacts(lines: readonly string[]): PreambleFacts {
  const facts: PreambleFacts = {};
  for (const line of lines) {
    const rate = RATE.exec(line)?.[1];
    if (rate !== undefined && facts.sampleRateHz === undefined) put(facts, numberOf(rate));
    const interval = INTERVAL.exec(line);
    if (interval?.[1] !== undefined && facts.sampleRateHz === undefined) {
      put(facts, (/^ms/i.test(interval[2] ?? '') ? 1000 : 1) / numberOf(interval[1]));
    }
    const offset = ZONE.exec(line)?.[1];
    const minutes = offset === undefined ? (IS_UTC.test(line) ? 0 : Number.NaN) : offsetIn(offset);
    if (!Number.isNaN(minutes) && facts.offset === undefined) facts.offset = offsetText(minutes);
    if (facts.date === undefined && DATE_WORD.test(line)) {
      const date = plainDate(line);
      if (date !== null) facts.date = date;
    }
  }
  return facts;
}

function put(facts: PreambleFacts, rate: number): void {
  if (rate > 0 && rate <= 10_000) facts.sampleRateHz = rate;
}

const numberOf = (text: string) => Number(text.replace(',', '.'));

function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** A date whose order is beyond doubt: year first, a month in letters, dots, or a number above twelve. */
function plainDate(line: string): string | null {
  for (const piece of line.split(/[,;\t|="]|\s{2,}|:\s/)) {
    const cell = readClockCell(piece.trim()) ?? readClockCell(piece.trim().split(' ')[0] ?? '');
    if (!cell || Number.isNaN(cell.a)) continue;
    const { a, b, c } = cell;
    const dotted = /^\d{1,2}\.\d{1,2}\.\d{4}/.test(piece.trim());
    const dayFirst = dotted || a > 12;
    const [year, month, day] = a > 31 ? [a, b, c] : dayFirst ? [c, b, a] : b > 12 ? [c, a, b] : [Number.NaN, 0, 0];
    if (!(year >= 1970) || month < 1 || month > 12 || day < 1 || day > 31) continue;
    return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  }
  return null;
}
