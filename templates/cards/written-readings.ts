/** What was typed from a card as its readings: numbers read as people write them. */
import { allFields, type BoxReading, BY_HAND, type Card, entryFields } from '../../analysis/cards/index.ts';
import { typedNumber } from '../words/typed-number.ts';

/**
 * Readings of a card out of the text of its boxes.
 * @param card as printed, object
 * @param texts text by key of the box
 * @param sourceOf where a box's figure comes from, by key; written by hand where left out
 * @returns one reading for each box that holds something
 */
export function readingsOf(
  card: Card,
  texts: Readonly<Record<string, string>>,
  sourceOf: (key: string) => string = () => BY_HAND,
): BoxReading[] {
  return allFields(entryFields(card)).flatMap(({ key, input }) => {
    const text = texts[key]?.trim() ?? '';
    return text === ''
      ? []
      : [{ key, text, value: input === 'number' ? typedNumber(text) : null, source: sourceOf(key) }];
  });
}
