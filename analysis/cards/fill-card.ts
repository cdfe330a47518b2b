/**
 * A card from a test of the catalogue, this airplane, its place in the program, and what is predicted. Every number
 * on it is the airplane's own or the test's; what is missing is said in its place and listed.
 */
import type { Airplane } from '../airplane/index.ts';
import { type CatalogueTest, type Known, linesFor, type PreparedTest } from '../catalogue/index.ts';
import { aimOf } from './aims.ts';
import { type Card, cardSchema } from './card.ts';
import { type CardPredictions, expectFrom, expectNothing, FIRST_MEASUREMENT } from './expectation.ts';
import { gatesFor } from './gates.ts';
import { type Line, words } from './line.ts';
import { logBoxes } from './log-boxes.ts';
import { lineOf } from './prepared-line.ts';
import { readingTables } from './reading-tables.ts';
import { spokenNumbers } from './spoken-numbers.ts';
import { stopNumbers } from './stop-numbers.ts';
import { stripFor } from './strip.ts';

/** Where the card stands in the program, and on which day of which revision it was printed. */
export interface CardPlace {
  /** `Flight 6` */
  outing: string;
  /** `Flight 6, card 2 of 4` */
  place: string;
  revision: string;
  printed: string;
}

export interface CardInput {
  test: CatalogueTest;
  airplane: Airplane;
  place: CardPlace;
  /** accepted results, for the numbers worked out from them */
  known?: Known;
  predictions?: CardPredictions;
}

/**
 * Fill a card.
 * @param input test, airplane, place, results and predictions
 * @returns the card, plain JSON
 */
export function fillCard(input: CardInput): Card {
  const { test, airplane, place, known = {}, predictions } = input;
  const ready = linesFor(test, airplane, known);
  const strip = stripFor(test.id, airplane);
  const { tables, boxes } = readingTables(test, ready, airplane, predictions ? expectFrom(predictions) : expectNothing);
  const banded =
    boxes.some((box) => box.expect !== null) ||
    tables.some((table) => table.columns.some((column) => column.expect !== null || column.expectsByRow));
  return cardSchema.parse({
    format: 'proveout-card-1',
    id: test.id,
    title: ready.title,
    aim: aimOf(test.id, ready.purpose),
    stage: test.stage,
    identity: {
      registration: airplane.registration,
      airplane: airplane.name,
      invented: airplane.invented,
      ...place,
    },
    gates: gatesFor(test, ready, airplane),
    strip,
    steps: ready.steps.map((line) => spokenNumbers(lineOf(line))),
    tables,
    boxes,
    expectNote: expectNote(test, predictions, banded),
    stop: stopNumbers(ready, banded),
    after: afterLines(ready, strip.length > 0),
    log: logBoxes(test, airplane),
    missing: ready.missing,
    sources: [],
  } satisfies Card);
}

function expectNote(test: CatalogueTest, predictions: CardPredictions | undefined, banded: boolean): string {
  if (banded && predictions) return `Expect: ${predictions.note}`;
  return test.reductions.length > 0 ? FIRST_MEASUREMENT : '';
}

function afterLines(ready: PreparedTest, configured: boolean): Line[] {
  const own = ready.after.map((line) => spokenNumbers(lineOf(line)));
  return configured ? [words('Configuration restored'), ...own] : own;
}
