/** What the cards of a book are filled from: its airplane, its program, the results accepted so far. */
import type { Paper, Selection } from '../../analysis/cards/index.ts';
import type { AcceptedResult } from '../../analysis/catalogue/index.ts';
import { InputProblem } from '../../analysis/remarks/index.ts';
import type { PrintOptions } from '../../templates/cards/options.ts';
import { airplaneOf } from '../book/read-state.ts';
import { storedResults } from '../book/stored-results.ts';
import type { Desk } from '../desk.ts';
import type { PrintCardsInput } from './print-cards.ts';
import { planFor } from './program-of.ts';

export interface CardsWanted {
  selection: Selection;
  paper: Paper;
  options?: PrintOptions | undefined;
  /** briefing, emergency and return sheets round the cards of one outing */
  packet?: boolean | undefined;
}

/** @throws InputProblem when the stored description no longer fits the schema */
export async function cardInput(
  desk: Desk,
  bookId: string,
  { selection, paper, options, packet }: CardsWanted,
): Promise<PrintCardsInput> {
  const book = desk.shelf.open(bookId);
  const { parsed, problems, revision } = airplaneOf(book);
  if (!parsed) throw new InputProblem(problems);
  const accepted = (await storedResults(book)).filter((one) => one.status === 'accepted');
  const results = accepted.flatMap(({ kind, tests, result }): AcceptedResult[] =>
    tests.length === 0 ? [{ kind, result }] : tests.map((test) => ({ kind, test, result })),
  );
  return {
    airplane: parsed,
    revision,
    selection,
    paper,
    program: await planFor(parsed),
    known: { results },
    day: desk.now(),
    ...(options ? { options } : {}),
    ...(packet ? { packet } : {}),
  };
}
