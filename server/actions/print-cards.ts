/** Cards of an airplane's program to HTML and to PDF: the same document for the screen and for paper. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { Card, CardPredictions, Paper, ProgramCardsInput, Selection } from '../../analysis/cards/index.ts';
import type { CatalogueTest, Known } from '../../analysis/catalogue/index.ts';
import type { Program } from '../../analysis/program/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { PrintOptions } from '../../templates/cards/options.ts';
import type { Printer, PrintRequest } from '../printing/print.ts';
import { planFor } from './program-of.ts';

export interface PrintCardsInput {
  airplane: Airplane;
  /** revision of the description, or null where it stands in no book */
  revision: number | null;
  selection: Selection;
  paper: Paper;
  options?: PrintOptions;
  /** briefing, emergency and return sheets round the cards of a flight or outing */
  packet?: boolean;
  /** the program where it was arranged by hand; else it is planned */
  program?: Program;
  ownTests?: readonly CatalogueTest[];
  known?: Known;
  predictionsFor?: (test: CatalogueTest) => CardPredictions | undefined;
  /** these cards, filled already, in place of a selection of the program */
  cards?: readonly Card[];
  /** day printed; today where it is not given */
  day?: Date;
}

export interface PreviewedCards {
  html: string;
  cards: Card[];
  sheets: number;
  pages: number;
}

export interface PrintedCards {
  pdf: Uint8Array;
  cards: Card[];
  sheets: number;
  pages: number;
}

/**
 * The cards of a selection, or a flight's packet, as the document that is shown and printed.
 * @throws InputProblem `not-found` where the selection names no card of the program, `bad-request` where a packet is
 * asked of more than one outing
 */
export async function previewCards(input: PrintCardsInput): Promise<PreviewedCards> {
  const { airplane, revision, selection, paper, options, ownTests, known, predictionsFor, day = new Date() } = input;
  const program = input.program ?? (await planFor(airplane));
  // the catalogue and the templates are large, and most commands do without them
  const { cardsOfProgram, packetOf } = await import('../../analysis/cards/index.ts');
  const filling: ProgramCardsInput = {
    airplane,
    program,
    selection,
    revision: revision === null ? 'no revision' : `rev ${revision}`,
    printed: dayInWords(day),
    ...(ownTests ? { ownTests } : {}),
    ...(known ? { known } : {}),
    ...(predictionsFor ? { predictionsFor } : {}),
  };
  if (input.packet) {
    const packet = packetOf(filling);
    if (!packet)
      throw new InputProblem([problem('bad-request', 'A packet is of one flight or one outing: choose which.')]);
    const { packetDocument } = await import('../../templates/packet/packet.view.ts');
    return { ...packetDocument(packet, paper, options), cards: packet.cards };
  }
  const cards = input.cards ? [...input.cards] : cardsOfProgram(filling);
  if (cards.length === 0) {
    throw new InputProblem([
      problem('not-found', `The program of ${airplane.name} has no card for ${said(selection)}.`),
    ]);
  }
  const { cardsDocument } = await import('../../templates/cards/cards.view.ts');
  return { ...cardsDocument(cards, paper, options), cards };
}

/**
 * The same as a PDF.
 * @throws InputProblem where there is no such card, no browser, or too many prints wait
 */
export async function printCards(
  input: PrintCardsInput,
  request: PrintRequest = {},
  printer?: Printer,
): Promise<PrintedCards> {
  request.onProgress?.('filling the cards');
  const { html, cards, sheets, pages } = await previewCards(input);
  request.signal?.throwIfAborted();
  // the browser library takes longer to load than the rest of the service
  const { printer: shared } = await import('../printing/print.ts');
  const pdf = await (printer ?? shared()).printHtml(html, request);
  return { pdf, cards, sheets, pages };
}

function said(selection: Selection): string {
  switch (selection.kind) {
    case 'all':
      return 'any test';
    case 'card':
      return `the test ${selection.id}`;
    case 'stage':
      return `the stage ${selection.stage}`;
    default:
      return `${selection.kind} ${selection.number}`;
  }
}

/** The day something is printed on, as it stands on paper. */
export function dayInWords(day: Date): string {
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' }).format(day);
}
