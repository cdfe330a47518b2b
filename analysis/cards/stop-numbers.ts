/**
 * The stop frame: the test's stop lines with the airplane's limits less the agreed margin, cut so that each number
 * stands in an item of its own, and what is done next.
 */
import type { PreparedTest } from '../catalogue/index.ts';
import type { Card } from './card.ts';
import { hasNumber, type Line, plainText, type Token } from './line.ts';
import { lineOf } from './prepared-line.ts';

/** Said where readings carry a band. */
const OUTSIDE = 'outside the band twice: stop and think';

/**
 * Stop lines that hold for every run of their kind; they stand on a card's first sheet and are not repeated.
 */
const STANDING = new Set([
  'leak, fuel smell, smoke or unusual noise',
  'loss of an indication the test depends on',
  'unexpected force, buffet, vibration, noise or smell',
  'weather, traffic or pilot fatigue worse than briefed',
]);

/**
 * The stop frame of a card.
 * @param test the test made ready for the airplane, object
 * @param banded true where readings have a predicted band
 * @returns items, the action after a stop, and the rule for the band
 */
export function stopNumbers(test: PreparedTest, banded: boolean): Card['stop'] {
  const items = test.stop.flatMap((line) => itemsOf(lineOf(line)));
  return {
    items: items.map((line) => ({ line, standing: STANDING.has(plainText(line)) })),
    action: test.action.map(lineOf),
    band: banded ? OUTSIDE : '',
  };
}

/** A line with two numbers becomes two items where it says "or" between them. */
function itemsOf(line: Line): Line[] {
  const items: Line[] = [];
  let item: Token[] = [];
  for (const token of line) {
    const cut = token.kind === 'text' && hasNumber(item) ? /^(.*?)(,? or )(.*)$/.exec(token.text) : null;
    if (cut && token.kind === 'text') {
      const [, before = '', , after = ''] = cut;
      if (before !== '') item.push({ kind: 'text', text: before });
      items.push(item);
      item = after === '' ? [] : [{ kind: 'text', text: after }];
    } else item.push(token);
  }
  if (item.length > 0) items.push(item);
  return items;
}
