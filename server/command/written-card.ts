/** A card with its readings, named on the command line: what the service answers for a written card, or boxes alone. */
import * as z from 'zod';
import { BY_HAND, type Card, cardSchema, flownCard } from '../../analysis/cards/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { readingsOf } from '../../templates/cards/written-readings.ts';
import { readJson } from './read-json.ts';
import type { Io } from './verb.ts';

const box = z.union([
  z.string(),
  z.object({ text: z.string(), at: z.string().optional(), who: z.string().optional() }),
]);
const writtenSchema = z.object({ card: cardSchema.optional(), boxes: z.record(z.string(), box) });

/**
 * The flown card of a file.
 * @param blank the card the boxes belong to where the file holds none
 * @throws InputProblem where the file is none of this, or names no card
 */
export async function flownFrom(path: string, blank: Card | undefined, io: Io): Promise<Card> {
  const read = writtenSchema.safeParse(await readJson(path, 'bad-request', io));
  const card = read.data?.card ?? blank;
  if (!read.success || !card) {
    const why = read.success ? 'it holds no card; name one with --card' : (read.error.issues[0]?.message ?? '');
    throw new InputProblem([problem('bad-request', `${path} is no written card: ${why}.`, { file: path })]);
  }
  const boxes = Object.entries(read.data.boxes).map(
    ([key, one]) => [key, typeof one === 'string' ? { text: one } : one] as const,
  );
  const byKey = new Map(boxes);
  const texts = Object.fromEntries(boxes.map(([key, one]) => [key, one.text]));
  return flownCard(
    card,
    readingsOf(card, texts, (key) => {
      const one = byKey.get(key);
      const by = one && 'who' in one && one.who ? ` by ${one.who}` : '';
      const on = one && 'at' in one && one.at ? `, ${one.at.slice(0, 10)}` : '';
      return `${BY_HAND}${by}${on}`;
    }),
  );
}
