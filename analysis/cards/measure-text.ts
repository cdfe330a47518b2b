/** How wide a text is and how many lines it takes, before a page exists. Never fewer lines than the browser sets. */
import type { MeasuredText } from './card.ts';
import { letterWidth } from './letter-widths.ts';
import { ESTIMATED, type Line, MISSING } from './line.ts';
import { pointsToMm } from './sheet-size.ts';

/** Letter heights of a piece of text, points: words, and the numbers among them. */
export interface Face {
  words: number;
  numbers: number;
}

/** outline round the place of a missing number, both sides, mm */
const OUTLINE = 3;

/**
 * Width of a text on one line.
 * @param text words, text
 * @param points letter height, points
 * @returns mm
 */
export function textWidth(text: string, points: number): number {
  let thousandths = 0;
  for (const letter of text) thousandths += letterWidth(letter);
  return (thousandths / 1000) * pointsToMm(points);
}

/**
 * A text that fits a line: whole, or cut between words with an ellipsis.
 * @param text words, text
 * @param points letter height, points
 * @param width of the line, mm
 * @param lines how many lines there are, count
 * @returns the text that fits
 */
export function fitText(text: string, points: number, width: number, lines = 1): string {
  const face = { words: points, numbers: points };
  const fits = (one: string) => linesIn([{ kind: 'text', text: one }], face, width) <= lines;
  if (fits(text)) return text;
  const all = text.split(' ');
  for (let count = all.length - 1; count > 0; count--) {
    const cut = `${all.slice(0, count).join(' ')} …`;
    if (fits(cut)) return cut;
  }
  const letters = [...text];
  let kept = 0;
  while (kept < letters.length && fits(`${letters.slice(0, kept + 1).join('')}…`)) kept += 1;
  return `${letters.slice(0, kept).join('')}…`;
}

/**
 * Width of a value written back into its box, with its mark and the number of its source.
 * @param measured the value, or null for an empty box
 * @param type letter heights: of the value, and of the source's number, points
 * @returns mm, 0 for an empty box
 */
export function measuredWidth(measured: MeasuredText | null, type: { body: number; small: number }): number {
  if (!measured) return 0;
  const mark = measured.outside ? textWidth('▲', type.body) + 0.8 : 0;
  const source = measured.source ? textWidth(String(measured.source), type.small) : 0;
  return mark + textWidth(measured.text, type.body) + source;
}

interface Piece {
  width: number;
  /** a break may come before it, and this much space is saved then */
  space: number;
}

/**
 * Width of a line set without a break.
 * @param line tokens, list
 * @param face letter heights, points
 * @returns mm
 */
export function lineWidth(line: Line, face: Face): number {
  return piecesOf(line, face).reduce((sum, piece) => sum + piece.space + piece.width, 0);
}

/**
 * Lines a text takes in a column.
 * @param line tokens, list
 * @param face letter heights, points
 * @param width of the column, mm
 * @returns count, at least 1
 */
export function linesIn(line: Line, face: Face, width: number): number {
  let count = 1;
  let used = 0;
  for (const piece of piecesOf(line, face)) {
    const wanted = used === 0 ? piece.width : used + piece.space + piece.width;
    if (wanted <= width || (used === 0 && piece.width <= width)) {
      used = wanted;
    } else {
      if (used > 0) count += 1;
      const whole = Math.floor(piece.width / width);
      count += whole;
      used = piece.width - whole * width;
    }
  }
  return count;
}

function piecesOf(line: Line, face: Face): Piece[] {
  const space = textWidth(' ', face.words);
  const pieces: Piece[] = [];
  let breakable = false;
  const add = (width: number) => {
    const last = pieces.at(-1);
    if (last && !breakable) last.width += width;
    else pieces.push({ width, space: pieces.length === 0 ? 0 : space });
    breakable = false;
  };
  // a word may be parted after a hyphen between letters
  const addWord = (word: string) => {
    const [first = '', ...rest] = word.split(/(?<=[a-z]-)(?=[a-z])/i);
    add(textWidth(first, face.words));
    for (const part of rest) pieces.push({ width: textWidth(part, face.words), space: 0 });
  };
  for (const token of line) {
    if (token.kind === 'text') {
      for (const part of token.text.split(/( +)/)) {
        if (part === '') continue;
        if (part.startsWith(' ')) breakable = true;
        else addWord(part);
      }
    } else {
      // the first word behind a number is bound to it, the others may break
      const after = token.kind === 'number' && token.estimated ? `${token.unit} ${ESTIMATED}` : token.unit;
      const [bound = '', ...rest] = after.split(' ');
      const first =
        token.kind === 'number' ? textWidth(token.number, face.numbers) : textWidth(MISSING, face.words) + OUTLINE;
      add(first + textWidth(`${bound === '' ? '' : ' '}${bound}`, face.words));
      for (const word of rest) {
        breakable = true;
        add(textWidth(word, face.words));
      }
    }
  }
  return pieces;
}
