/** `proveout cards`: cards of a program as a PDF. */
import { basename } from 'node:path';
import type { Card, Paper, Selection } from '../../analysis/cards/index.ts';
import { PAPERS } from '../../analysis/cards/sheet-size.ts';
import type { AcceptedResult } from '../../analysis/catalogue/index.ts';
import { STAGES } from '../../analysis/catalogue/stage.ts';
import { type PrintCardsInput, previewCards, printCards } from '../actions/print-cards.ts';
import { airplaneFrom } from './airplane-from.ts';
import { resultFrom } from './result-from.ts';
import { type Io, printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';
import { writeBytes } from './write-bytes.ts';

export const cards: Verb = {
  help: `proveout cards AIRPLANE.json (--all | --flight N | --outing N | --stage S | --card ID) --out FILE.pdf
  [--paper half-letter | a5 | letter-2up | a4-2up] [--packet] [--results RESULT.json]...
  [--written WRITTEN.json] [--json]

Cards of an airplane's program, filled from its description. Give one choice of cards. Paper is half-letter unless
said otherwise. --packet adds the briefing, emergency and return sheets of a flight or outing. --results takes accepted
results (the JSON of "proveout reduce KIND --json"), given once for each: what they predict stands on the cards with
its band. --written prints the one card as it was flown, its readings in its boxes: the JSON of a written card, or
{ "boxes": { "KEY": "text" } } with --card. "-" reads the airplane from standard input.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, {
      all: { type: 'boolean' },
      flight: { type: 'string' },
      outing: { type: 'string' },
      stage: { type: 'string' },
      card: { type: 'string' },
      paper: { type: 'string' },
      packet: { type: 'boolean' },
      results: { type: 'string', multiple: true },
      written: { type: 'string' },
      out: { type: 'string' },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new WrongUsage('one AIRPLANE.json is wanted.');
    if (values.out === undefined) throw new WrongUsage('--out FILE.pdf is wanted.');
    const selection = selectionFrom(values);
    const paper = paperFrom(values.paper);
    const airplane = await airplaneFrom(path, io);
    const results: AcceptedResult[] = [];
    for (const file of values.results ?? []) {
      const result = await resultFrom(file, io);
      results.push({ kind: result.kind, result, name: basename(file, '.json').slice(0, 40) });
    }
    const filled = { airplane, revision: null, selection, paper, known: { results } };
    const flown = values.written === undefined ? undefined : await flownOf(values.written, filled, io);
    const printed = await printOnce({
      ...(flown ? { cards: [flown] } : {}),
      airplane,
      revision: null,
      selection,
      paper,
      known: { results },
      ...(values.packet ? { packet: true } : {}),
    });
    await writeBytes(values.out, printed.pdf);
    const { sheets, pages } = printed;
    const missing = printed.cards.flatMap((card) => card.missing.map((one) => ({ card: card.id, ...one })));
    const ids = printed.cards.map((card) => card.id);
    if (values.json) printJson(io, { file: values.out, paper, cards: ids, sheets, pages, missing });
    else {
      printLines(io, [
        `${values.out}: ${ids.length} cards on ${sheets} sheets, ${pages} pages`,
        ...missing.map((one) => `missing before ${one.card} can be flown: ${one.meaning} (${one.path})`),
      ]);
    }
    return 0;
  },
};

async function printOnce(input: PrintCardsInput) {
  const { openPrinter } = await import('../printing/print.ts');
  const printer = openPrinter();
  try {
    return await printCards(input, {}, printer);
  } finally {
    await printer.close();
  }
}

/** The one card of the choice, with its readings. */
async function flownOf(path: string, filled: PrintCardsInput, io: Io): Promise<Card> {
  const { cards: blank } = filled.selection.kind === 'card' ? await previewCards(filled) : { cards: [] };
  const { flownFrom } = await import('./written-card.ts');
  return flownFrom(path, blank.at(-1), io);
}

interface Choice {
  all?: boolean | undefined;
  flight?: string | undefined;
  outing?: string | undefined;
  stage?: string | undefined;
  card?: string | undefined;
}

function selectionFrom({ all, flight, outing, stage, card }: Choice): Selection {
  const given = [all, flight, outing, stage, card].filter((one) => one !== undefined);
  if (given.length !== 1) throw new WrongUsage('one of --all, --flight, --outing, --stage, --card is wanted.');
  if (flight !== undefined) return { kind: 'flight', number: wholeNumber('--flight', flight) };
  if (outing !== undefined) return { kind: 'outing', number: wholeNumber('--outing', outing) };
  if (card !== undefined) return { kind: 'card', id: card };
  if (stage === undefined) return { kind: 'all' };
  const known = STAGES.find((one) => one === stage);
  if (!known) throw new WrongUsage(`there is no stage "${stage}"; there are ${STAGES.join(', ')}.`);
  return { kind: 'stage', stage: known };
}

function wholeNumber(option: string, text: string): number {
  if (!/^[1-9]\d{0,3}$/.test(text)) throw new WrongUsage(`${option} wants a number, not "${text}".`);
  return Number(text);
}

function paperFrom(text = 'half-letter'): Paper {
  const known = PAPERS.find((one) => one === text);
  if (!known) throw new WrongUsage(`there is no paper "${text}"; there are ${PAPERS.join(', ')}.`);
  return known;
}
