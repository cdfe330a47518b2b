/**
 * A card dealt onto sheets. What does not fit goes on the next sheet, never smaller: gates, steps and readings are
 * cut between their lines and rows only, and the stop frame stands at the top of every sheet, above the writing hand.
 */
import type { Card } from './card.ts';
import { deal } from './deal.ts';
import { FOOT_HEIGHT, stopHeight, stripHeight } from './part-heights.ts';
import { type SheetPart, sectionsOf } from './sections.ts';
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
    // the clock is written where the steps are
    deal(
      [
        [...before, ...after],
        [...steps, ...log, ...readings],
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
