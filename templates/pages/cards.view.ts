/** Cards on the screen as they will be printed, with the choices of paper. */
import * as z from 'zod';
import type { Program } from '../../analysis/program/index.ts';
import { type PrintOptions, paperSchema, printOptionsSchema } from '../cards/options.ts';
import { choiceField, fieldPart, tickField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count } from '../words/list.ts';
import type { PageContext } from './kept.ts';
import { outingName } from './outing-words.ts';

export const cardsView = z.strictObject({
  frame: framePart,
  what: z.string(),
  about: z.string(),
  hidden: z.array(z.strictObject({ name: z.string(), value: z.string() })),
  fields: z.array(fieldPart),
  preview: z.string(),
  printAction: z.string(),
  /** the same as JSON, for the module that follows the printing */
  job: z.string(),
  jobs: z.string(),
  book: z.string(),
});
export type CardsView = z.infer<typeof cardsView>;

type Paper = z.infer<typeof paperSchema>;

export type CardSelection =
  | { kind: 'all' }
  | { kind: 'outing'; number: number }
  | { kind: 'stage'; stage: Program['stages'][number]['stage'] }
  | { kind: 'card'; id: string };

export interface CardsChoice {
  selection: CardSelection;
  paper: Paper;
  options: PrintOptions;
  packet: boolean;
  /** the card as it was flown, in place of a blank one */
  flown?: { written?: number; result?: number };
}

const PAPERS: Record<Paper, string> = {
  'half-letter': 'half letter, 5.5 × 8.5 in',
  a5: 'A5',
  'letter-2up': 'two on a letter sheet, to cut',
  'a4-2up': 'two on an A4 sheet, to cut',
};

/** What the address asks for; words it does not know fall back to the usual. */
export function cardsChoice(at: (name: string) => string | undefined, program: Program): CardsChoice {
  const paper = paperSchema.safeParse(at('paper'));
  const options = printOptionsSchema.safeParse({
    ...(at('type') === 'large' ? { type: 'large' } : {}),
    ...(at('hand') === 'left' ? { hand: 'left' } : {}),
    night: at('night') === 'yes',
    backs: at('backs') === 'yes',
  });
  const stage = program.stages.find((one) => one.stage === at('stage'))?.stage;
  const outing = Number(at('outing'));
  const test = at('test');
  const selection: CardSelection =
    test !== undefined && test !== ''
      ? { kind: 'card', id: test }
      : Number.isInteger(outing) && outing > 0
        ? { kind: 'outing', number: outing }
        : stage === undefined
          ? { kind: 'all' }
          : { kind: 'stage', stage };
  return {
    selection,
    paper: paper.success ? paper.data : 'half-letter',
    options: options.success ? options.data : printOptionsSchema.parse({}),
    packet: selection.kind === 'outing' && at('packet') === 'yes',
    ...flownIn(at),
  };
}

/** The Cards page. */
export function cardsPage(
  choice: CardsChoice,
  program: Program,
  counts: { cards: number; sheets: number; pages: number },
  { book }: PageContext,
): CardsView {
  const { selection, paper, options, packet, flown } = choice;
  const hidden = [...selectionFields(selection), ...flownFields(flown)];
  const query = new URLSearchParams({
    paper,
    type: options.type,
    hand: options.hand,
    night: options.night ? 'yes' : '',
    backs: options.backs ? 'yes' : '',
    packet: packet ? 'yes' : '',
  });
  for (const { name, value } of hidden) query.set(name, value);
  return {
    frame: frameOf('Cards', {
      question: 'What goes to the airplane?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
      modules: ['page-print'],
    }),
    what: flown ? 'The card as it was flown.' : whatOf(selection, program, packet),
    about: `${count(counts.cards, 'card')} on ${count(counts.sheets, 'sheet')}, ${count(counts.pages, 'page')} of paper. Print at 100 %, without fitting to the page.`,
    hidden,
    fields: [
      choiceField(
        { name: 'paper', label: 'Paper' },
        paperSchema.options.map((value) => ({ value, text: PAPERS[value] })),
        paper,
      ),
      choiceField(
        { name: 'type', label: 'Type' },
        [
          { value: 'normal', text: 'normal' },
          { value: 'large', text: 'large' },
        ],
        options.type,
      ),
      choiceField(
        { name: 'hand', label: 'Writing hand' },
        [
          { value: 'right', text: 'right' },
          { value: 'left', text: 'left' },
        ],
        options.hand,
      ),
      tickField({ name: 'night', label: 'For night: heavier strokes' }, options.night),
      tickField({ name: 'backs', label: 'Backs for notes' }, options.backs),
      ...(selection.kind === 'outing'
        ? [tickField({ name: 'packet', label: 'Whole packet: briefing, emergency and return sheets' }, packet)]
        : []),
    ],
    preview: bookPath(book.id, `/cards/preview?${query}`),
    printAction: bookPath(book.id, '/cards/print'),
    job: JSON.stringify({ deed: 'print', selection, paper, options, packet, ...(flown ? { flown } : {}) }),
    jobs: `/api${bookPath(book.id, '/jobs')}`,
    book: book.id,
  };
}

/** A flown card is named by its written card or its result. */
function flownIn(at: (name: string) => string | undefined): Pick<CardsChoice, 'flown'> {
  const [written, result] = ['written', 'result'].map((name) => Number(at(name)));
  if (written !== undefined && Number.isInteger(written) && written > 0) return { flown: { written } };
  return result !== undefined && Number.isInteger(result) && result > 0 ? { flown: { result } } : {};
}

function flownFields(flown: CardsChoice['flown']): { name: string; value: string }[] {
  return Object.entries(flown ?? {}).map(([name, value]) => ({ name, value: String(value) }));
}

function selectionFields(selection: CardSelection): { name: string; value: string }[] {
  if (selection.kind === 'outing') return [{ name: 'outing', value: String(selection.number) }];
  if (selection.kind === 'stage') return [{ name: 'stage', value: selection.stage }];
  return selection.kind === 'card' ? [{ name: 'test', value: selection.id }] : [];
}

function whatOf(selection: CardSelection, program: Program, packet: boolean): string {
  if (selection.kind === 'all') return 'Every card of the program.';
  if (selection.kind === 'stage') {
    return `Stage: ${program.stages.find((one) => one.stage === selection.stage)?.title ?? selection.stage}.`;
  }
  if (selection.kind === 'card') {
    const tests = program.stages.flatMap((stage) => stage.tests);
    return `One test: ${tests.find((one) => one.id === selection.id)?.title ?? selection.id}.`;
  }
  const outing = program.outings.find((one) => one.number === selection.number);
  return outing ? `${outingName(outing, program)}: ${outing.title}${packet ? ', whole packet' : ''}.` : '';
}
