/** A column of clock cells as numbers. Most cells share all but the time with the one before: only that is read anew. */
import { packDate, readClockCell } from './clock-cell.ts';

export interface Stamps {
  /** from packDate; NaN where the cell has none; null where no cell has one */
  dates: Float64Array | null;
  /** s; NaN where the cell has none; null where no cell has one */
  seconds: Float64Array | null;
  /** minutes east of UTC; NaN where the cell does not say; null where no cell does */
  offsets: Float64Array | null;
  hasDate: boolean;
  hasTime: boolean;
  /** cells that were neither empty nor a clock cell, count */
  strange: number;
}

const digit = (text: string, at: number): number => {
  const code = text.charCodeAt(at) - 48;
  return code >= 0 && code <= 9 ? code : Number.NaN;
};
const pair = (text: string, at: number): number => digit(text, at) * 10 + digit(text, at + 1);

/**
 * Read every cell.
 * @param texts cells as written, one a row
 * @returns dates, seconds and offsets, one a row
 */
export function readStamps(texts: readonly string[]): Stamps {
  const n = texts.length;
  const out = {
    dates: new Float64Array(n).fill(Number.NaN),
    seconds: new Float64Array(n).fill(Number.NaN),
    offsets: new Float64Array(n).fill(Number.NaN),
    hasDate: false,
    hasTime: false,
    strange: 0,
  };
  let before = '';
  let at = -1;
  let head = '';
  let rest = '';
  let date = Number.NaN;
  let seconds = Number.NaN;
  let offset = Number.NaN;
  for (let i = 0; i < n; i += 1) {
    const text = texts[i] ?? '';
    if (text === '') continue;
    if (text !== before) {
      const quick = at >= 0 && text.startsWith(head) ? quickSeconds(text, at, rest) : Number.NaN;
      if (Number.isNaN(quick)) {
        const cell = readClockCell(text);
        before = text;
        at = -1;
        date = seconds = offset = Number.NaN;
        if (!cell) {
          if (!/^[-.\s]*$|^n\/?a$/i.test(text)) out.strange += 1;
          continue;
        }
        date = packDate(cell.a, cell.b, cell.c);
        seconds = cell.secondsOfDay;
        offset = cell.offsetMinutes;
        if (!cell.twelveHour) {
          const m = /(?<!\d)\d\d:\d\d:\d\d(?:\.\d+)?/.exec(text);
          if (m) {
            at = m.index;
            head = text.slice(0, at);
            rest = text.slice(at + m[0].length);
          }
        }
      } else {
        before = text;
        seconds = quick;
      }
    }
    out.dates[i] = date;
    out.seconds[i] = seconds;
    out.offsets[i] = offset;
    if (!Number.isNaN(date)) out.hasDate = true;
    if (!Number.isNaN(seconds)) out.hasTime = true;
  }
  return out;
}

/** `hh:mm:ss.f` at a place of the text, if what follows is the same as before; else NaN and the cell is read in full. */
function quickSeconds(text: string, at: number, rest: string): number {
  if (text[at + 2] !== ':' || text[at + 5] !== ':') return Number.NaN;
  const minutes = pair(text, at + 3);
  const whole = pair(text, at + 6);
  if (!(minutes < 60) || !(whole <= 60)) return Number.NaN;
  let end = at + 8;
  let fraction = 0;
  if (text[end] === '.') {
    let scale = 10;
    for (end += 1; !Number.isNaN(digit(text, end)); end += 1, scale *= 10) fraction += digit(text, end) / scale;
  }
  if (text.length - end !== rest.length || !text.endsWith(rest)) return Number.NaN;
  return pair(text, at) * 3600 + minutes * 60 + whole + fraction;
}
