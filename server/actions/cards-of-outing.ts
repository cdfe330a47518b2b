/** The paper of an outing: which of its cards were printed, whether they still hold, and what was written into them. */
import { type Card, cardsOfProgram, changedSince } from '../../analysis/cards/index.ts';
import { printings } from '../book/current-state.ts';
import { keptCard, type WrittenSummary, writtenSummaries } from '../book/written-cards.ts';
import type { Desk } from '../desk.ts';
import { cardInput } from './card-input.ts';
import { planFor } from './program-of.ts';

export interface PaperOfTest {
  test: string;
  /** day, revision and paper of the newest print; null where it was never printed */
  printed: { day: string; revision: string; paper: string } | null;
  /** why the print no longer holds; empty where it does */
  stale: string[];
  written: WrittenSummary[];
}

/** @throws InputProblem when the stored description no longer fits the schema */
export async function cardsOfOuting(desk: Desk, bookId: string, number: number): Promise<Map<string, PaperOfTest>> {
  const book = desk.shelf.open(bookId);
  const input = await cardInput(desk, bookId, { selection: { kind: 'outing', number }, paper: 'half-letter' });
  const program = input.program ?? (await planFor(input.airplane));
  const now = cardsOfProgram({
    airplane: input.airplane,
    program,
    selection: input.selection,
    revision: '',
    printed: '',
    known: input.known ?? {},
    ...(input.ownTests ? { ownTests: input.ownTests } : {}),
  });
  const prints = printings(book.database).reverse();
  const written = writtenSummaries(book);
  const tests = [...new Set(now.map((card) => card.id))];
  const sheet = `return-${number}`;
  return new Map(
    [...tests, sheet].map((test) => {
      const print = prints.find((one) => one.documents.some((document) => document.test === test));
      const cards = (print?.documents ?? [])
        .filter((one) => one.test === test)
        .map(({ document }) => keptCard(book, document));
      const [first] = cards;
      return [
        test,
        {
          test,
          printed:
            print && first
              ? { day: first.identity.printed, revision: first.identity.revision, paper: print.paper }
              : null,
          stale: changes(
            cards,
            now.filter((card) => card.id === test),
          ),
          written: written.filter((one) => one.test === test),
        },
      ];
    }),
  );
}

/** Changes of a test's printed cards against the same cards now; a test's parts on other outings have cards alike. */
function changes(printed: readonly Card[], now: readonly Card[]): string[] {
  const all = printed.flatMap((card) => {
    const same = now.find((one) => one.title === card.title);
    return same ? changedSince(card, same) : ['the card has another title now'];
  });
  return [...new Set(all)];
}
