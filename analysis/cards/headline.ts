/** What stands in the title block of every sheet, which is always the same height. */
import type { Card } from './card.ts';
import { words } from './line.ts';
import { fitText, linesIn, textWidth } from './measure-text.ts';
import { pitchesOf, TYPE_SCALES, type TypeSize, titleBlock } from './sheet-size.ts';

export interface Headline {
  title: string;
  /** set smaller, in up to two lines */
  long: boolean;
  aim: string;
  /** what did not fit and stands as a part of the first sheet instead; empty where all did */
  rest: string;
}

/**
 * Title and aim of a card, as they fit the title block.
 * @param card the card, object
 * @param content width, mm
 * @param type type size, text
 * @returns what stands in the block, and what does not
 */
export function headlineOf(card: Card, content: number, type: TypeSize): Headline {
  const scale = TYPE_SCALES[type];
  const pitch = pitchesOf(type);
  const long = textWidth(card.title, scale.title) > content;
  const title = long ? fitText(card.title, scale.longTitle, content, 2) : card.title;
  const face = (points: number) => ({ words: points, numbers: points });
  const titleHeight = long ? linesIn(words(title), face(scale.longTitle), content) * pitch.longTitle : pitch.title;
  const aimHeight = linesIn(words(card.aim), face(scale.note), content) * pitch.note;
  const fits = 1.4 + titleHeight + aimHeight <= titleBlock(type);
  const rest = [title === card.title ? '' : card.title, fits ? '' : card.aim].filter((text) => text !== '').join('. ');
  return { title, long, aim: fits ? card.aim : '', rest };
}
