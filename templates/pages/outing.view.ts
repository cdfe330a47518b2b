/** One outing: what is done on it, at which weight, with how much fuel, and what it waits for. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { LoadPoint, Program, Turns } from '../../analysis/program/index.ts';
import { show } from '../../analysis/units/index.ts';
import { envelopeDrawing, envelopePart } from '../parts/envelope.view.ts';
import { choiceField, fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { sentence } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { minutesInWords } from '../words/time.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { KeptNote, KeptPaper, KeptStatus, PageContext } from './kept.ts';
import { NOTES, noteInWords } from './outing-notes.ts';
import { outingName, outingPath } from './outing-words.ts';
import { changePath } from './plan-change.ts';
import { testPath } from './test.view.ts';
import { writePath, writtenPath } from './written.view.ts';

const link = z.strictObject({ text: z.string(), href: z.string() });
const fact = z.strictObject({ name: z.string(), text: z.string() });

export const outingView = z.strictObject({
  frame: framePart,
  title: z.string(),
  why: z.string(),
  opens: z.string(),
  cards: z.string(),
  packet: z.string(),
  tests: z.array(
    z.strictObject({
      title: z.string(),
      href: z.string(),
      part: z.string(),
      purpose: z.string(),
      status: outcomePart,
      waits: z.array(link),
      missing: z.array(z.string()),
      paper: z.string(),
      stale: z.string(),
      written: z.array(z.strictObject({ text: z.string(), href: z.string(), flown: z.string() })),
      write: z.string(),
    }),
  ),
  facts: z.array(fact),
  loading: z.strictObject({ words: z.string(), facts: z.array(fact), drawing: envelopePart.nullable() }).nullable(),
  fuel: z.strictObject({ words: z.string(), facts: z.array(fact) }).nullable(),
  remarks: z.array(z.string()),
  before: link.nullable(),
  after: link.nullable(),
  afterwards: z.array(link),
  notes: z.array(z.string()),
  noteAction: z.string(),
  noteFields: z.array(fieldPart),
  turnAction: z.string(),
  turns: z.array(z.strictObject({ text: z.string(), to: z.int(), refused: z.string() })),
  number: z.int(),
  putOff: z.string(),
});
export type OutingView = z.infer<typeof outingView>;

/**
 * The page of an outing.
 * @returns the view, or undefined where the program has no such outing
 */
export function outingPage(
  number: number,
  program: Program,
  airplane: Airplane,
  facts: {
    status: readonly KeptStatus[];
    notes: readonly KeptNote[];
    turns: Turns;
    paper: ReadonlyMap<string, KeptPaper>;
  },
  { book, units, zone }: PageContext,
  message = '',
): OutingView | undefined {
  const { status, paper } = facts;
  const index = program.outings.findIndex((one) => one.number === number);
  const outing = program.outings[index];
  if (!outing) return undefined;
  const tests = program.stages.flatMap((stage) => stage.tests);
  const states = new Map(status.map((one) => [one.test, one.status]));
  const linkTo = (at: number) => {
    const other = program.outings[at];
    return other ? { text: outingName(other, program), href: outingPath(book.id, other.number) } : null;
  };
  const { loading, fuel } = outing;
  return {
    frame: frameOf(outingName(outing, program), {
      question: 'What do we do on this outing?',
      book,
      way: 'outings',
      crumbs: [{ text: 'Outings', href: bookPath(book.id, '/outings') }],
      done: message,
    }),
    // a flight's title repeats its name, which is the heading already
    title: outing.title.replace(`${outingName(outing, program)}: `, ''),
    why: outing.why,
    opens: outing.opens ?? '',
    cards: bookPath(book.id, `/cards?outing=${number}`),
    packet: outing.kind === 'flight' ? bookPath(book.id, `/cards?outing=${number}&packet=yes`) : '',
    tests: outing.parts.map(({ test: id, part, of }) => {
      const test = tests.find((one) => one.id === id);
      const waits = (test?.needs ?? []).filter(
        (need) => states.get(need) !== 'accepted' && !outing.tests.includes(need),
      );
      return {
        title: test?.title ?? id,
        href: testPath(book.id, id),
        part: of > 1 ? `part ${part} of ${of}` : '',
        purpose: test?.purpose ?? '',
        status: outcomeInWords(states.get(id) ?? 'planned'),
        waits: waits.map((need) => ({
          text: tests.find((one) => one.id === need)?.title ?? need,
          href: testPath(book.id, need),
        })),
        missing: (test?.missing ?? []).map((one) => one.meaning),
        ...paperOf(paper.get(id), id, book.id),
      };
    }),
    facts: [
      { name: 'On condition', text: minutesInWords(outing.minutesOnCondition) },
      { name: 'Whole outing', text: minutesInWords(outing.minutesTotal) },
      ...(outing.height === null
        ? []
        : [
            { name: 'Height', text: `up to ${show(outing.height, units.altitude, { decimals: 0 }).text} above ground` },
          ]),
      ...(outing.daylight ? [{ name: 'Light', text: 'daylight' }] : []),
    ],
    loading: loading && {
      words: loading.words,
      facts: [
        ...(loading.takeoff ? [{ name: 'Take-off', text: loadText(loading.takeoff, units) }] : []),
        ...(loading.landing ? [{ name: 'Landing', text: loadText(loading.landing, units) }] : []),
        ...loading.added.map((one) => ({
          name: `Aboard: ${one.name}`,
          text: show(one.mass, units.mass, { decimals: 0 }).text,
        })),
        {
          name: 'Envelope',
          text:
            loading.inside === null
              ? 'cannot be worked out: the description lacks a figure'
              : loading.inside
                ? 'take-off and landing inside it, uncertainty included'
                : 'not inside it with its uncertainty',
        },
      ],
      drawing: envelopeDrawing(airplane, units, [
        ...(loading.takeoff ? [{ label: 'take-off', ...loading.takeoff }] : []),
        ...(loading.landing ? [{ label: 'landing', ...loading.landing }] : []),
      ]),
    },
    fuel: fuel && {
      words: fuel.words,
      facts: [
        { name: 'At take-off', text: show(fuel.takeoff, units.fuel, { decimals: 0 }).text },
        { name: 'Burnt', text: show(fuel.burn, units.fuel, { decimals: 0 }).text },
        { name: 'Kept at landing', text: show(fuel.reserve, units.fuel, { decimals: 0 }).text },
        { name: 'Usable', text: show(fuel.usable, units.fuel, { decimals: 0 }).text },
      ],
    },
    remarks: [...outing.remarks],
    before: linkTo(index - 1),
    after: linkTo(index + 1),
    afterwards: [
      ...returnSheets(paper.get(`return-${number}`), number, book.id),
      { text: 'Drop the recorders’ files', href: bookPath(book.id, '/logs') },
      { text: 'Write down the hours', href: bookPath(book.id, '/outings#hours') },
      { text: 'Write down a squawk', href: bookPath(book.id, '') },
    ],
    notes: facts.notes
      .filter((one) => one.parts.some((part) => outing.parts.some((other) => sameParts(part, other))))
      .map((one) => noteInWords(one, zone)),
    noteAction: `${outingPath(book.id, number)}/notes`,
    noteFields: [
      choiceField({ name: 'what', label: 'It was' }, NOTES, 'done'),
      textField({ name: 'note', label: 'Note', hint: 'Weather, what was found, who was there.' }, '', { long: true }),
      textField({ name: 'who', label: 'Your name' }, ''),
    ],
    turnAction: bookPath(book.id, '/program/arrange'),
    turns: [
      { text: 'Earlier', to: number - 1, refused: sentence(facts.turns.earlier ?? '') },
      { text: 'Later', to: number + 1, refused: sentence(facts.turns.later ?? '') },
    ],
    number,
    putOff: changePath(book.id, { happened: [{ kind: 'no-go', outing: number }] }),
  };
}

/** A test's card: where it stands, and the way to write its readings in. */
function paperOf(paper: KeptPaper | undefined, test: string, book: string) {
  const printed = paper?.printed;
  return {
    paper: printed ? `Printed ${printed.day}, ${printed.revision}, ${printed.paper}.` : 'Not printed yet.',
    stale: (paper?.stale ?? []).join('; '),
    written: (paper?.written ?? []).map((one) => ({
      text: `Readings: ${one.filled} of ${one.of} boxes`,
      href: writtenPath(book, one.number),
      flown: bookPath(book, `/cards?written=${one.number}`),
    })),
    write: writePath(book, test),
  };
}

function returnSheets(paper: KeptPaper | undefined, number: number, book: string) {
  const begun = (paper?.written ?? []).map((one) => ({
    text: 'Go on with the return sheet',
    href: writtenPath(book, one.number),
  }));
  return begun.length > 0 ? begun : [{ text: 'Write the return sheet in', href: writePath(book, `return-${number}`) }];
}

function loadText(point: LoadPoint, units: InstrumentUnits): string {
  const mass = show(point.mass, units.mass, { u95: point.massU95 }).text;
  const arm = show(point.arm, units.arm, { u95: point.armU95 }).text;
  const chord = point.chord === null ? '' : `, ${show(point.chord, '%', { decimals: 1 }).text} of the chord`;
  return `${mass} at ${arm}${chord}`;
}

function sameParts(one: { test: string; part: number }, other: { test: string; part: number }): boolean {
  return one.test === other.test && one.part === other.part;
}
