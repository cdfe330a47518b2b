/** One list to look things up in: the glossary, the remarks, the sources. */
import * as z from 'zod';
import { CODES } from '../../analysis/remarks/index.ts';
import { SOURCES } from '../../analysis/sources.ts';
import { QUANTITIES, show, siUnitOf, unitOf } from '../../analysis/units/index.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';
import { cell, tablePart } from '../parts/table.view.ts';
import { nameInWords } from '../words/list.ts';
import { HELP_CRUMB } from './help.view.ts';

export const lookUpView = z.strictObject({ frame: framePart, explains: z.string(), table: tablePart });
export type LookUpView = z.infer<typeof lookUpView>;

const head = (...names: string[]) => names.map((name) => ({ name, unit: '', number: false }));
const none = { csv: '', empty: '' };

/** Every quantity with its name, symbol, units and plausible range. */
export function glossaryPage(): LookUpView {
  return {
    frame: frameOf('Quantities and units', { question: 'What is each quantity called?', crumbs: [HELP_CRUMB] }),
    explains:
      'Channels of a log, readings on a card, tables and the JSON of the API all use these names. A reading outside the plausible range is taken for a fault of sensor or unit (common practice, no source).',
    table: {
      caption: 'The glossary',
      columns: head('Quantity', 'Name in files', 'Symbol', 'Shown in', 'Plausible', 'Meaning'),
      rows: QUANTITIES.map((one) => {
        const si = siUnitOf(one.dimension).id;
        const trade = one.tradeUnits[0] ?? si;
        const [low, high] = one.plausible.map((end) => show(end, trade).number);
        const symbol = unitOf(trade).symbol;
        return {
          aside: false,
          cells: [
            cell(nameInWords(one.name), { heading: true }),
            cell(one.indexed ? `${one.name}#n` : one.name),
            cell(one.symbol),
            cell(one.tradeUnits.map((id) => unitOf(id).symbol || 'number').join(', ')),
            cell(`${low} to ${high}${symbol === '' || symbol === '°' ? symbol : ` ${symbol}`}`),
            cell(one.meaning),
          ],
        };
      }),
      ...none,
    },
  };
}

/** Every problem, refusal and flag with its meaning and cure. */
export function remarksPage(): LookUpView {
  return {
    frame: frameOf('Problems, refusals and flags', {
      question: 'What does a remark mean, and what mends it?',
      crumbs: [HELP_CRUMB],
    }),
    explains:
      'A problem is input that can’t be used. A refusal is data that don’t support the answer asked for. A flag is a remark on an answer that stands.',
    table: {
      caption: 'Everything Proveout can object to',
      columns: head('Remark', 'Kind', 'Meaning', 'What mends it'),
      rows: Object.entries(CODES).map(([code, one]) => ({
        aside: false,
        cells: [cell(nameInWords(code), { heading: true }), cell(one.kind), cell(one.meaning), cell(one.mend)],
      })),
      ...none,
    },
  };
}

const MARKS = {
  read: 'read by us',
  memory: 'from memory, not confirmed',
  practice: 'common practice, no source',
  own: 'our own simulation',
} as const;

/** Every document the formulas and limits rest on. */
export function sourcesPage(): LookUpView {
  return {
    frame: frameOf('Sources', { question: 'What does it rest on?', crumbs: [HELP_CRUMB] }),
    explains: 'How far a source is to be trusted is said beside it.',
    table: {
      caption: 'Documents',
      columns: head('Title', 'Year', 'Gives', 'How we know it'),
      rows: SOURCES.map((one) => ({
        aside: false,
        cells: [cell(one.title, { heading: true }), cell(one.year ?? ''), cell(one.gives), cell(MARKS[one.mark])],
      })),
      ...none,
    },
  };
}
