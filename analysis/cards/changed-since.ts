/** Whether a card in the pilot's hand still says what it would say if it were printed now. */
import type { Card } from './card.ts';

/** Parts of a card that may change while the paper lies on the desk, in words. */
const PARTS: readonly { words: string; of: (card: Card) => unknown }[] = [
  { words: 'the stop numbers have changed', of: (card) => card.stop.items.map((one) => one.line) },
  { words: 'what is done after a stop has changed', of: (card) => card.stop.action },
  { words: 'the steps or their numbers have changed', of: (card) => card.steps },
  { words: 'the conditions before it have changed', of: (card) => card.gates },
  { words: 'the configuration has changed', of: (card) => card.strip },
  { words: 'the prediction has changed', of: expectations },
  {
    words: 'the boxes have changed',
    of: (card) => [
      card.tables.map((table) => [table.key, table.rows.map((row) => row.key), table.columns.map((one) => one.key)]),
      card.boxes.map((one) => one.key),
    ],
  },
];

/**
 * What has changed since a card was printed.
 * @param printed the card as printed, object
 * @param now the same card as it would be printed now, object
 * @returns a sentence part for each change; none where the paper still holds
 */
export function changedSince(printed: Card, now: Card): string[] {
  return PARTS.filter(({ of }) => JSON.stringify(of(printed)) !== JSON.stringify(of(now))).map(({ words }) => words);
}

function expectations(card: Card): unknown {
  return [
    card.expectNote,
    card.ahead,
    card.boxes.map((one) => one.expect?.text ?? null),
    card.tables.map((table) => [
      table.columns.map((one) => one.expect?.text ?? null),
      table.rows.map((row) => Object.entries(row.cells).map(([key, cell]) => [key, cell.expect?.text ?? null])),
    ]),
  ];
}
