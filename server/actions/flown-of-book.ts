/** A flown card of a book: what was written by hand, and beside it what the logs of the same test read. */
import { type BoxReading, type Card, flownCard, readingsFromLog } from '../../analysis/cards/index.ts';
import { recordingOf, seriesOf } from '../../analysis/logs/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { sampleAt } from '../../analysis/segments/index.ts';
import { readingsOf } from '../../templates/cards/written-readings.ts';
import type { StoredResult } from '../book/book-state.ts';
import { storedResults } from '../book/stored-results.ts';
import { type WrittenCard, writtenCard } from '../book/written-cards.ts';
import type { Desk } from '../desk.ts';
import { cardToWrite } from './card-to-write.ts';
import { readStoredLog } from './read-stored-log.ts';

/** Which flown card: of a written card, or of a result reduced from logs. */
export interface FlownWanted {
  written?: number | undefined;
  result?: number | undefined;
}

/**
 * @returns the card with its readings: hand-written figures first, the log's where the hand left a box empty
 * @throws InputProblem `not-found`, or `bad-request` where neither a card nor a result is named
 */
export async function flownOfBook(desk: Desk, bookId: string, { written, result }: FlownWanted): Promise<Card> {
  const book = desk.shelf.open(bookId);
  const results = await storedResults(book);
  if (written !== undefined) {
    const hand = writtenCard(book, written);
    const ofTest = results.filter((one) => one.tests.includes(hand.card.id) && one.input.logs.length > 0);
    const newest = ofTest.filter((one) => one.decision !== 'repeat').at(-1);
    return flownCard(hand.card, [...byHand(hand), ...(newest ? await byLog(desk, bookId, hand.card, newest) : [])]);
  }
  const stored = results.find((one) => one.number === result);
  const [test] = stored?.tests ?? [];
  if (!stored || test === undefined) {
    throw new InputProblem([
      problem(
        stored ? 'bad-request' : 'not-found',
        stored ? 'This result names no test, so it has no card.' : `There is no result ${result}.`,
      ),
    ]);
  }
  const { card } = await cardToWrite(desk, bookId, { test });
  return flownCard(card, await byLog(desk, bookId, card, stored));
}

function byHand(written: WrittenCard): BoxReading[] {
  const texts = Object.fromEntries(Object.entries(written.boxes).map(([key, { text }]) => [key, text]));
  return readingsOf(written.card, texts, (key) => {
    const box = written.boxes[key];
    return box ? `written by hand${box.who === '' ? '' : ` by ${box.who}`}, ${box.at.slice(0, 10)}` : '';
  });
}

async function byLog(desk: Desk, bookId: string, card: Card, stored: StoredResult): Promise<BoxReading[]> {
  const tables = [];
  for (const log of stored.input.logs) {
    const { outcome } = await readStoredLog(desk, bookId, log);
    if (outcome.table) tables.push(outcome.table);
  }
  const shifts = tables.map(
    (table) => stored.result.alignment?.find((one) => one.file === table.file)?.shiftSeconds ?? 0,
  );
  const recording = recordingOf(tables, shifts);
  return readingsFromLog(card, stored.result, (quantity, seconds) => {
    const series = seriesOf(recording, quantity);
    const value = series ? sampleAt(series, [seconds])[0] : undefined;
    return value === undefined || Number.isNaN(value) ? null : value;
  });
}
