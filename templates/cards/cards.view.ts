/**
 * Cards as one HTML document: the same for the preview on screen and for paper. What the sheets after the first repeat
 * (identity, title, stop frame, strip) is hidden from the tags of the PDF, as running heads are: it is read once a card.
 */
import type { Card, Paper } from '../../analysis/cards/index.ts';
import { sheetsOf } from '../../analysis/cards/index.ts';
import type { PrintOptions } from './options.ts';
import { USUAL_OPTIONS } from './options.ts';
import { backView, type CardsDocument, type PiledSheet, paperDocument } from './paper-document.ts';
import { sheetView } from './sheet.view.ts';

/**
 * The document of some cards.
 * @param cards in the order they are flown, list
 * @param paper paper form, text
 * @param options the person's choices, object
 * @returns HTML that needs nothing from outside
 */
export function cardsHtml(cards: readonly Card[], paper: Paper, options: PrintOptions = USUAL_OPTIONS): string {
  return cardsDocument(cards, paper, options).html;
}

/** The same, with its counts. */
export function cardsDocument(
  cards: readonly Card[],
  paper: Paper,
  options: PrintOptions = USUAL_OPTIONS,
): CardsDocument {
  return paperDocument(pileOf(cards, paper, options, true), documentTitle(cards), paper, options);
}

/**
 * The sheets of some cards.
 * @param opens true where the first card of each outing opens its place in the outline
 * @returns the pile, in the order of the cards
 */
export function pileOf(cards: readonly Card[], paper: Paper, options: PrintOptions, opens: boolean): PiledSheet[] {
  return cards.flatMap((card, i) => {
    const first = opens && card.identity.outing !== cards[i - 1]?.identity.outing;
    return sheetsOf(card, paper, options.type).map((sheet) => ({
      front: sheetView(card, sheet, first && sheet.number === 1, paper, options),
      back: backView(card, sheet.number, paper, options),
    }));
  });
}

function documentTitle(cards: readonly Card[]): string {
  const first = cards[0];
  if (!first) return 'No cards';
  const { registration, revision } = first.identity;
  const outings = new Set(cards.map((card) => card.identity.outing));
  const what = cards.length === 1 ? first.title : outings.size === 1 ? first.identity.outing : `${cards.length} cards`;
  return `${registration} ${what}, ${revision}`;
}
