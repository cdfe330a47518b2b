/** One test: why it is here, what it needs and unlocks, its outing, its numbers, and where it stands. */
import * as z from 'zod';
import { gateHolding, type Program } from '../../analysis/program/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { labelOf } from '../forms/airplane-words.ts';
import { choiceField, fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count, listInWords, sentence } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { minutesInWords } from '../words/time.ts';
import { methodPath } from './help.view.ts';
import type { KeptResult, KeptStatus, PageContext } from './kept.ts';
import { type MovePart, movePart } from './move-choices.ts';
import { outingPath, titled } from './outing-words.ts';
import { changePath } from './plan-change.ts';
import { resultInRow, resultRow } from './results.view.ts';

const link = z.strictObject({ text: z.string(), href: z.string() });
const linked = z.strictObject({ text: z.string(), href: z.string(), status: outcomePart });

export const testView = z.strictObject({
  frame: framePart,
  status: outcomePart,
  standing: z.string(),
  purpose: z.string(),
  because: z.string(),
  fields: z.array(link),
  why: z.string(),
  opens: z.string(),
  needs: z.array(linked),
  unlocks: z.array(linked),
  consumes: z.array(z.string()),
  produces: z.array(z.string()),
  outings: z.array(link),
  minutes: z.string(),
  gate: link.nullable(),
  missing: z.array(z.string()),
  airplaneHref: z.string(),
  card: z.string(),
  methods: z.array(z.strictObject({ title: z.string(), method: z.string(), write: z.string() })),
  logsHref: z.string(),
  results: z.array(resultRow),
  markAction: z.string(),
  markFields: z.array(fieldPart),
  again: z.array(link),
  moves: z.array(movePart),
  moveWords: z.string(),
  leaveAction: z.string(),
  leaveMeans: z.array(z.string()),
  leaveFields: z.array(fieldPart),
  own: z.strictObject({ edit: z.string(), withdraw: z.string() }).nullable(),
});
export type TestView = z.infer<typeof testView>;

/** Address of a test's page. */
export function testPath(book: string, test: string): string {
  return bookPath(book, `/program/${encodeURIComponent(test)}`);
}

const MARKS = [
  { value: 'briefed', text: 'briefed' },
  { value: 'flown', text: 'flown or done, not yet looked at' },
  { value: 'accepted', text: 'accepted: done as the card asks' },
  { value: 'repeat', text: 'to be repeated' },
  { value: 'planned', text: 'planned, as if nothing was done' },
];

/**
 * The page of a test.
 * @returns the view, or undefined where the program has no such test
 */
export function testPage(
  id: string,
  program: Program,
  facts: { status: readonly KeptStatus[]; results: readonly KeptResult[]; moves: readonly MovePart[] },
  context: PageContext,
  done = '',
): TestView | undefined {
  const tests = program.stages.flatMap((stage) => stage.tests);
  const test = tests.find((one) => one.id === id);
  if (!test) return undefined;
  const { book } = context;
  const states = new Map(facts.status.map((one) => [one.test, one]));
  const kept = states.get(id);
  const named = (other: string) => ({
    text: tests.find((one) => one.id === other)?.title ?? other,
    href: testPath(book.id, other),
    status: outcomeInWords(states.get(other)?.status ?? 'planned'),
  });
  const gate = gateHolding(test, program);
  const asked = program.gates.filter((one) => one.evidence.some((piece) => piece.test === id));
  return {
    frame: frameOf(test.title, {
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
      done,
    }),
    status: outcomeInWords(kept?.status ?? 'planned'),
    standing: kept?.because ?? '',
    purpose: test.purpose,
    because: test.because,
    fields: test.paths.map((path) => ({ text: `${labelOf(path)} (${path})`, href: bookPath(book.id, '/airplane') })),
    why: test.why,
    opens: test.opens ?? '',
    needs: test.needs.map(named),
    unlocks: test.unlocks.map(named),
    consumes: test.consumes.map(sentence),
    produces: test.produces.map(sentence),
    outings: test.outings.flatMap((number) => {
      const outing = program.outings.find((one) => one.number === number);
      return outing ? [{ text: titled(outing, program), href: outingPath(book.id, number) }] : [];
    }),
    minutes: [
      test.flightMinutes > 0 ? `${minutesInWords(test.flightMinutes)} in flight` : '',
      test.groundMinutes > 0 ? `${minutesInWords(test.groundMinutes)} on the ground` : '',
    ]
      .filter(Boolean)
      .join(', '),
    gate: gate ? { text: `Gate ${gate.id}: ${gate.title}`, href: bookPath(book.id, `/gates/${gate.id}`) } : null,
    missing: test.missing.map((one) => sentence(one.meaning)),
    airplaneHref: bookPath(book.id, '/airplane'),
    card: bookPath(book.id, `/cards?test=${encodeURIComponent(id)}`),
    methods: test.reductions.map((kind) => ({
      title: reductionOf(kind)?.title ?? kind,
      method: methodPath(kind),
      write: bookPath(book.id, `/results/new/${kind}?test=${encodeURIComponent(id)}`),
    })),
    logsHref: bookPath(book.id, '/logs'),
    results: facts.results
      .filter((one) => one.tests.includes(id))
      .map((one) => resultInRow(one, context))
      .reverse(),
    markAction: `${testPath(book.id, id)}/mark`,
    markFields: [
      choiceField({ name: 'mark', label: 'It is' }, MARKS, 'flown'),
      textField({ name: 'note', label: 'Note', hint: 'What was seen, by whom.' }, '', { long: true }),
      textField({ name: 'who', label: 'Your name' }, ''),
    ],
    again: (isUntouched(kept?.status) ? [] : test.outings).map((number, i) => ({
      text: test.outings.length > 1 ? `Put part ${i + 1} back into the plan` : 'Put it back into the plan',
      href: changePath(book.id, {
        happened: [{ kind: 'repeat', test: id, part: partOn(program, number, id) }],
      }),
    })),
    moves: [...facts.moves],
    moveWords: facts.moves.length === 0 ? 'It is on record as done, and stays where it is.' : '',
    leaveAction: `${testPath(book.id, id)}/left-out`,
    leaveMeans: [
      test.unlocks.length === 0
        ? 'No other test waits for it.'
        : `${count(test.unlocks.length, 'test')} would no longer wait for it: ${listInWords(test.unlocks.map((other) => `“${named(other).text}”`))}.`,
      ...(test.produces.length === 0 ? [] : [`Nobody would give: ${listInWords(test.produces)}.`]),
      ...asked.map((one) => `Gate ${one.id} asks for it, and would show it as waived by you.`),
    ],
    leaveFields: [
      textField({ name: 'reason', label: 'Why it is left out', required: true }, '', { long: true }),
      textField(
        {
          name: 'instead',
          label: 'Which limit stays in its place',
          hint: 'Such as: no stalls with power; placarded.',
          required: true,
        },
        '',
        { long: true },
      ),
      textField({ name: 'who', label: 'Your name' }, ''),
    ].map((one) => ({ ...one, id: `leave-${one.id}` })),
    own: test.own
      ? { edit: bookPath(book.id, `/program/own/${id}`), withdraw: bookPath(book.id, `/program/own/${id}/withdraw`) }
      : null,
  };
}

/** Which part of a test an outing holds. */
function partOn(program: Program, outing: number, test: string): number {
  return program.outings[outing - 1]?.parts.find((one) => one.test === test)?.part ?? 1;
}

function isUntouched(status: string | undefined): boolean {
  return status === undefined || status === 'planned' || status === 'briefed';
}
