/** The paper a result came from or can be printed on: the card its figures were written on, and its flown card. */
import { bookPath } from '../parts/frame.view.ts';
import type { KeptResult } from './kept.ts';
import { writtenPath } from './written.view.ts';

/**
 * The card under a result.
 * @param kept the result, object
 * @param book name of the book, text
 * @returns the written card with its sheets, null where logs were reduced; and the address of the flown card, empty
 * where the result names no test
 */
export function paperUnder(kept: KeptResult, book: string) {
  const { card } = kept.input;
  const sheets = card?.sheets.length === 1 ? `sheet ${card.sheets[0]}` : `sheets ${card?.sheets.join(', ')}`;
  return {
    card: card
      ? {
          text: `${card.title}, ${card.revision}, printed ${card.printed}, ${sheets}`,
          href: writtenPath(book, card.number),
        }
      : null,
    flown: card
      ? bookPath(book, `/cards?written=${card.number}`)
      : kept.tests.length > 0 && kept.input.logs.length > 0
        ? bookPath(book, `/cards?result=${kept.number}`)
        : '',
  };
}
