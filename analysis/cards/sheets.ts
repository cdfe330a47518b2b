/**
 * A card dealt onto sheets. What does not fit goes on the next sheet, never smaller: gates, steps and readings are
 * cut between their lines and rows only, and the stop frame stands at the top of every sheet, above the writing hand.
 */
import type { Card } from './card.ts';
import { FOOT_HEIGHT, stopHeight, stripHeight } from './part-heights.ts';
import { type Section, type SheetPart, sectionsOf } from './sections.ts';
import { MEASURES_MM, type Paper, SHEETS, type TypeSize, titleBlock } from './sheet-size.ts';

/** what a browser's rounding of many lines may add up to, mm */
const SPARE = 0.6;

export interface Sheet {
  number: number;
  of: number;
  parts: SheetPart[];
}

/**
 * The sheets of a card.
 * @param card the card, object
 * @param paper paper form, text
 * @param type type size, text
 * @returns at least one sheet
 */
export function sheetsOf(card: Card, paper: Paper, type: TypeSize): Sheet[] {
  const { content, height } = SHEETS[paper];
  const { clip, foot, gap } = MEASURES_MM;
  const fixed = clip + titleBlock(type) + gap + FOOT_HEIGHT + foot + stripHeight(card, content, type) + SPARE;
  const room = (sheet: number) => height - fixed - stopHeight(card, content, type, sheet === 0);
  const parts = sectionsOf(card, content, type, room(1));
  const { before, steps, readings, after, log } = parts;
  const ways = [
    deal([[...before, ...steps, ...readings, ...after, ...log]], room),
    // what is read on the ground on one sheet, what is read in the air on the others
    deal(
      [
        [...before, ...after],
        [...steps, ...readings, ...log],
      ],
      room,
    ),
    deal(
      [
        [...before, ...steps],
        [...readings, ...after, ...log],
      ],
      room,
    ),
    deal(
      [
        [...before, ...steps, ...after],
        [...readings, ...log],
      ],
      room,
    ),
  ];
  const flown = card.log.length > 0 && card.strip.length > 0;
  const best = ways.reduce((a, b) => (cost(b, flown) < cost(a, flown) ? b : a));
  return number(best);
}

/** Fewest sheets; steps torn apart cost more in the air than on the ground, steps parted from readings a little. */
function cost(sheets: SheetPart[][], flown: boolean): number {
  const withSteps = sheets.filter((parts) => parts.some((part) => part.kind === 'steps'));
  const withReadings = sheets.filter((parts) =>
    parts.some((part) => part.kind === 'table' || part.kind === 'turned' || part.kind === 'boxes'),
  );
  const together = withReadings.length === 0 || withReadings.some((parts) => withSteps.includes(parts));
  return sheets.length + Math.max(0, (flown ? 1.1 : 0.6) * (withSteps.length - 1)) + (together ? 0 : 0.5);
}

function number(sheets: SheetPart[][]): Sheet[] {
  return sheets.map((parts, i) => ({ number: i + 1, of: sheets.length, parts }));
}

/** Deal groups of sections; each group starts on a sheet of its own. */
function deal(groups: Section[][], room: (sheet: number) => number): SheetPart[][] {
  const sheets: SheetPart[][] = [];
  for (const group of groups) {
    let sheet: SheetPart[] = [];
    let left = room(sheets.length);
    for (const section of group) {
      let from = 0;
      while (from < section.rows.length) {
        const to = fitting(section, from, left, sheet.length === 0);
        if (to === from) {
          sheets.push(sheet);
          sheet = [];
          left = room(sheets.length);
          continue;
        }
        const part = section.rows[from]?.part(from, to, from === 0);
        if (part) sheet.push(part);
        left -= section.header + heightOf(section, from, to);
        from = to;
        if (from < section.rows.length) {
          sheets.push(sheet);
          sheet = [];
          left = room(sheets.length);
        }
      }
    }
    if (sheet.length > 0) sheets.push(sheet);
  }
  return sheets.length > 0 ? sheets : [[]];
}

function heightOf(section: Section, from: number, to: number): number {
  return section.rows.slice(from, to).reduce((sum, row) => sum + row.height, 0);
}

/** Rows that fit, cut where a cut is allowed; all of an empty sheet's room is used before a group is torn. */
function fitting(section: Section, from: number, left: number, empty: boolean): number {
  let used = section.header;
  let to = from;
  while (to < section.rows.length) {
    const height = section.rows[to]?.height ?? 0;
    if (used + height > left) break;
    used += height;
    to += 1;
  }
  if (to === section.rows.length) return to;
  // no lone last row on the next sheet
  const lone = section.least - (section.rows.length - to);
  if (lone > 0 && to - lone > from + section.least - 1) to -= lone;
  let cut = to;
  while (cut > from && section.rows[cut - 1]?.keep) cut -= 1;
  if (cut > from) to = cut;
  else if (!empty) return from;
  const enough = to - from >= Math.min(section.least, section.rows.length - from);
  if (!enough && !empty) return from;
  return Math.max(to, empty ? from + 1 : from);
}
