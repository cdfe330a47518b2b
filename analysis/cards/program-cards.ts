/** The cards of a program, or of a part of it: each test on its outing, in the order they are done. */
import type { Airplane } from '../airplane/index.ts';
import { CATALOGUE, type CatalogueTest, type Known, STAGES, type Stage } from '../catalogue/index.ts';
import type { Outing, Part, Program } from '../program/index.ts';
import type { Card } from './card.ts';
import type { CardPredictions } from './expectation.ts';
import { fillCards } from './fill-card.ts';
import { predictionsFor as predictionsOf } from './predictions/predictions-for.ts';

/** Which cards: all, one outing, one flight, one stage, or one test. */
export type Selection =
  | { kind: 'all' }
  | { kind: 'outing'; number: number }
  | { kind: 'flight'; number: number }
  | { kind: 'stage'; stage: Stage }
  | { kind: 'card'; id: string };

export interface ProgramCardsInput {
  airplane: Airplane;
  program: Program;
  selection: Selection;
  /** as printed: `rev 7` */
  revision: string;
  /** day printed: `4 May 2031` */
  printed: string;
  ownTests?: readonly CatalogueTest[];
  known?: Known;
  /** what is predicted for a test, in place of what the accepted results predict */
  predictionsFor?: (test: CatalogueTest) => CardPredictions | undefined;
}

/**
 * Fill the cards of a selection.
 * @param input airplane, program, selection and what the cards print
 * @returns cards in the order of the program; none where the selection names nothing
 * @throws InputProblem when a test of one's own has more stop words than a card holds
 */
export function cardsOfProgram(input: ProgramCardsInput): Card[] {
  const { airplane, program, selection, revision, printed, ownTests = [], known = {}, predictionsFor } = input;
  const tests = new Map([...CATALOGUE, ...ownTests].map((test) => [test.id, test]));
  return program.outings.flatMap((outing) => {
    const name = outingName(outing, program);
    return outing.parts.flatMap((part, i) => {
      const test = tests.get(part.test);
      if (!test || !isChosen(selection, outing, part, test)) return [];
      const place = `${name}, card ${i + 1} of ${outing.parts.length}${part.of > 1 ? `, part ${part.part} of ${part.of}` : ''}`;
      const predictions = predictionsFor ? predictionsFor(test) : predictedFor(test, input);
      return fillCards({
        test,
        airplane,
        place: { outing: name, place, revision, printed },
        known,
        ...(predictions ? { predictions } : {}),
      });
    });
  });
}

/** Predictions from the accepted results, for a card as it would be without any. */
function predictedFor(test: CatalogueTest, { airplane, known = {} }: ProgramCardsInput): CardPredictions | undefined {
  const blank = fillCards({ test, airplane, place: NOWHERE, known }).at(-1);
  return blank && predictionsOf(test, blank, airplane, known.results ?? []);
}

const NOWHERE = { outing: '', place: '', revision: '', printed: '' };

/**
 * What an outing is called on paper: `Flight 6`, `Ground session 4`, `Shop day 12`.
 * @param outing the outing, object
 * @param program the program it belongs to, object
 * @returns its name
 */
export function outingName(outing: Outing, program: Program): string {
  if (outing.flight !== null) return `Flight ${outing.flight}`;
  const alike = program.outings.filter((one) => one.kind === outing.kind && one.number <= outing.number).length;
  return `${outing.kind === 'shop' ? 'Shop day' : 'Ground session'} ${alike}`;
}

/**
 * A selection from its words: `all`, `flight 6`, `outing 12`, `stage envelope`, `card stall-clean`.
 * @param words text
 * @returns the selection, or null where the words name none
 */
export function selectionOf(words: string): Selection | null {
  const [kind = '', rest = ''] = words.trim().split(/\s+/, 2);
  const number = Number(rest);
  const stage = STAGES.find((one) => one === rest);
  if (kind === 'all') return { kind };
  if ((kind === 'flight' || kind === 'outing') && Number.isInteger(number) && number > 0) return { kind, number };
  if (kind === 'stage' && stage) return { kind, stage };
  if (kind === 'card' && rest !== '') return { kind, id: rest };
  return null;
}

function isChosen(selection: Selection, outing: Outing, part: Part, test: CatalogueTest): boolean {
  switch (selection.kind) {
    case 'all':
      return true;
    case 'outing':
      return outing.number === selection.number;
    case 'flight':
      return outing.flight === selection.number;
    case 'stage':
      return test.stage === selection.stage;
    case 'card':
      // a test of several parts has one card; its other parts print with their flights
      return test.id === selection.id && part.part === 1;
  }
}
