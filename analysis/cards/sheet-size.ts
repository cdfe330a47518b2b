/** Paper, type and boxes in numbers. The style sheet gets these as variables, so that page and arithmetic agree. */
import { toSi } from '../units/index.ts';

export const PAPERS = ['half-letter', 'a5', 'letter-2up', 'a4-2up'] as const;
export type Paper = (typeof PAPERS)[number];

export const TYPES = ['normal', 'large'] as const;
export type TypeSize = (typeof TYPES)[number];

export interface SheetSize {
  /** one card sheet, mm */
  width: number;
  height: number;
  /** what can be written on, mm wide */
  content: number;
  /** free strip on the binding side, mm: even on single sheets, room for the punch where sheets are cut apart */
  binding: number;
  /** one or two card sheets on a page */
  perPage: 1 | 2;
}

const inches = (n: number) => toSi(n, 'in') * 1000;
const POINT = inches(1) / 72;

/** Points to millimetres. */
export function pointsToMm(points: number): number {
  return points * POINT;
}

const HALF_LETTER = { width: inches(5.5), height: inches(8.5) };
const A5 = { width: 148, height: 210 };
/** a hole of 6 mm centred 12 mm from the edge, as ISO 838 places it, and 1 mm to spare */
const PUNCHED = 16;

export const SHEETS: Readonly<Record<Paper, SheetSize>> = {
  'half-letter': { ...HALF_LETTER, content: 125, binding: (HALF_LETTER.width - 125) / 2, perPage: 1 },
  a5: { ...A5, content: 133, binding: (A5.width - 133) / 2, perPage: 1 },
  'letter-2up': { ...HALF_LETTER, content: 118.4, binding: PUNCHED, perPage: 2 },
  'a4-2up': { ...A5, width: 148.5, content: 127, binding: PUNCHED, perPage: 2 },
};

/** Letter heights in points. Smallest 9; read in flight 12 or more; numbers to fly 18 or more. */
export interface TypeScale {
  small: number;
  note: number;
  body: number;
  number: number;
  title: number;
  /** of a title too long for one line */
  longTitle: number;
}

export const TYPE_SCALES: Readonly<Record<TypeSize, TypeScale>> = {
  normal: { small: 9, note: 10, body: 12, number: 18, title: 14.5, longTitle: 12 },
  large: { small: 10.5, note: 11.5, body: 14, number: 21, title: 16.5, longTitle: 14 },
};

/** Fixed measures of every sheet, mm. */
export const MEASURES_MM = {
  /** covered by the kneeboard's clip: identity only */
  clip: 12,
  /** below the last line, inside what home printers reach */
  foot: 6,
  /** a writing box: height, and width for three digits */
  boxHeight: 9.2,
  boxThreeDigits: 18.2,
  /** lines of tables and boxes */
  line: 0.3,
  /** space between parts */
  gap: 2.4,
  stopBorder: 1.1,
  stopPadding: 2,
  tick: 3.6,
  tickGap: 1.7,
  stepNumber: 7.5,
  stepGap: 1.3,
} as const;

/** Line pitches, as multiples of the letter height. */
const PITCH = { text: 1.25, title: 1.18, number: 1.06 } as const;

export interface Pitches {
  small: number;
  note: number;
  body: number;
  /** of lines that carry numbers to fly */
  number: number;
  title: number;
  longTitle: number;
}

/** Line pitches of a type size, mm. */
export function pitchesOf(type: TypeSize): Pitches {
  const scale = TYPE_SCALES[type];
  return {
    small: pointsToMm(scale.small) * PITCH.text,
    note: pointsToMm(scale.note) * PITCH.text,
    body: pointsToMm(scale.body) * PITCH.text,
    number: pointsToMm(scale.number) * PITCH.number,
    title: pointsToMm(scale.title) * PITCH.title,
    longTitle: pointsToMm(scale.longTitle) * PITCH.title,
  };
}

/** Width of a box that holds so many digits, mm: 18 for each three, and a third of that for each one more. */
export function boxWidth(digits: number): number {
  return (MEASURES_MM.boxThreeDigits * Math.max(3, digits)) / 3;
}

/** Height of the title block, mm: the same on every sheet, so that the stop frame starts at one place. */
export function titleBlock(type: TypeSize): number {
  const pitch = pitchesOf(type);
  const twoLines = Math.max(pitch.title + 2 * pitch.note, 2 * pitch.longTitle + pitch.note);
  return 1.4 + twoLines + 1.8;
}
