/**
 * A card from a test of the catalogue, this airplane, its place in the program, and what is predicted. Every number
 * on it is the airplane's own or the test's; what is missing is said in its place and listed.
 */
import type { Airplane } from '../airplane/index.ts';
import { type CatalogueTest, type Known, linesFor, type PreparedTest } from '../catalogue/index.ts';
import { InputProblem, problem } from '../remarks/index.ts';
import { aimOf } from './aims.ts';
import { type Card, cardSchema } from './card.ts';
import { type CardPredictions, expectFrom, expectNote, expectNothing } from './expectation.ts';
import { gatesFor } from './gates.ts';
import { type Line, words } from './line.ts';
import { logBoxes } from './log-boxes.ts';
import { stopHeight } from './part-heights.ts';
import { lineOf } from './prepared-line.ts';
import { readingTables } from './reading-tables.ts';
import { SHEETS } from './sheet-size.ts';
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

/** steps one card may have: in the cockpit a person can do one thing at a time */
const MOST_STEPS = 9;

/** what the stop frame may take of the smallest sheet in the largest type, mm: the rest is for the work */
const MOST_STOP = 105;

/**
 * Fill the cards of a test: one, or several where it has more than nine steps; its readings stand on the last.
 * @param input test, airplane, place, results and predictions
 * @returns cards, plain JSON
 * @throws InputProblem when the test's stop lines do not fit a stop frame: a test of one's own with too many words
 */
export function fillCards(input: CardInput): Card[] {
  const whole = filled(input);
  const count = Math.max(1, Math.ceil(whole.steps.length / MOST_STEPS));
  const each = Math.ceil(whole.steps.length / count);
  return Array.from({ length: count }, (_, i) => {
    const last = i === count - 1;
    return cardSchema.parse({
      ...whole,
      title: count === 1 ? whole.title : `${whole.title}, ${i + 1} of ${count}`,
      gates: i === 0 ? whole.gates : [],
      steps: whole.steps.slice(i * each, (i + 1) * each),
      ...(last ? {} : { tables: [], boxes: [], after: [], log: [], expectNote: '', ahead: [] }),
    });
  });
}

/**
 * The one card of a test of nine steps or fewer, or the last of a longer one, where its readings are.
 * @param input test, airplane, place, results and predictions
 * @returns the card, plain JSON
 * @throws InputProblem when the test's stop lines do not fit a stop frame
 * @throws RangeError never: every test has a card
 */
export function fillCard(input: CardInput): Card {
  const card = fillCards(input).at(-1);
  if (!card) throw new RangeError(`the test ${input.test.id} has no card`);
  return card;
}

function filled(input: CardInput): Card {
  const { test, airplane, place, known = {}, predictions } = input;
  const ready = linesFor(test, airplane, known);
  const strip = stripFor(test.id, airplane);
  const { tables, boxes } = readingTables(test, ready, airplane, predictions ? expectFrom(predictions) : expectNothing);
  const expected = [
    ...boxes.map((box) => box.expect),
    ...tables.flatMap((table) => [
      ...table.columns.map((column) => column.expect),
      ...table.rows.flatMap((row) => Object.values(row.cells).map((cell) => cell.expect)),
    ]),
  ].flatMap((one) => one ?? []);
  // an estimate has no band to leave
  const banded = expected.some((one) => one.low !== null || one.high !== null);
  const card: Card = {
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
    expectNote: test.reductions.length > 0 || predictions ? expectNote(predictions, expected.length > 0) : '',
    ahead: [...(predictions?.ahead ?? [])],
    stop: stopNumbers(ready, banded || (predictions?.ahead ?? []).length > 0),
    after: afterLines(ready, strip.length > 0),
    log: logBoxes(test, airplane),
    missing: ready.missing,
    sources: [],
    exceeded: [],
  };
  const narrowest = Math.min(...Object.values(SHEETS).map((sheet) => sheet.content));
  if (stopHeight(card, narrowest, 'large', true) <= MOST_STOP) return card;
  const wanted = `${test.id}: its stop lines take more than half of a card; shorten them, or make two tests of it`;
  throw new InputProblem([problem('bad-catalogue', wanted, { field: `${test.id}.stop` })]);
}

function afterLines(ready: PreparedTest, configured: boolean): Line[] {
  const own = ready.after.map((line) => spokenNumbers(lineOf(line)));
  return configured ? [words('Configuration restored'), ...own] : own;
}
