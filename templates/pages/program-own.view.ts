/** A test of one's own: written, changed; refused with the chain shown where it does not fit. */
import * as z from 'zod';
import { LOADS, STAGE_TITLES, STAGES, SYSTEMS } from '../../analysis/catalogue/index.ts';
import { LOAD_MEANINGS, type Program } from '../../analysis/program/index.ts';
import { choiceField, fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import { sentence } from '../words/list.ts';
import type { PageContext } from './kept.ts';
import type { TypedTest } from './own-test-form.ts';

const group = z.strictObject({ title: z.string(), fields: z.array(fieldPart) });

export const programOwnView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  action: z.string(),
  id: z.string(),
  groups: z.array(group),
  tests: z.array(z.strictObject({ id: z.string(), title: z.string() })),
  products: z.array(z.string()),
});
export type ProgramOwnView = z.infer<typeof programOwnView>;

/** The form, empty or with what was typed or stored. */
export function programOwnPage(
  program: Program,
  { book }: PageContext,
  form: { typed?: TypedTest; problems?: ProblemPart[]; id?: string } = {},
): ProgramOwnView {
  const { typed = {}, id = '' } = form;
  const tests = program.stages.flatMap((stage) => stage.tests).filter((test) => test.id !== id);
  const titles = new Map(tests.map((test) => [test.id, test.title]));
  return {
    frame: frameOf(id === '' ? 'A test of your own' : `Change “${typed.title ?? id}”`, {
      question: 'What do you want to know that no test here shows?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
    }),
    problems: {
      heading: 'This test does not fit into the program yet',
      items: (form.problems ?? []).map((one) => ({ ...one, message: withTitles(one.message, titles) })),
    },
    action: bookPath(book.id, id === '' ? '/program/own' : `/program/own/${id}`),
    id,
    groups: groupsOf(typed),
    tests: tests.map((test) => ({ id: test.id, title: test.title })),
    products: [...new Set(tests.flatMap((test) => test.produces))].sort(),
  };
}

function groupsOf(typed: TypedTest) {
  const long = { long: true };
  const number = { number: true };
  return [
    {
      title: 'What it is',
      fields: [
        textField({ name: 'title', label: 'Name', required: true }, typed.title ?? ''),
        textField({ name: 'purpose', label: 'What it is to show', required: true }, typed.purpose ?? '', long),
        choiceField(
          { name: 'stage', label: 'Stage' },
          STAGES.map((value) => ({ value, text: STAGE_TITLES[value] })),
          typed.stage ?? 'systems-flight',
        ),
        choiceField(
          { name: 'system', label: 'System' },
          SYSTEMS.map((value) => ({ value, text: sentence(value) })),
          typed.system ?? 'airframe',
        ),
      ],
    },
    {
      title: 'Time, load and risk',
      fields: [
        textField(
          { name: 'flightMinutes', label: 'Minutes in flight', hint: 'On condition, without take-off and transit.' },
          typed.flightMinutes ?? '0',
          number,
        ),
        textField({ name: 'groundMinutes', label: 'Minutes on the ground' }, typed.groundMinutes ?? '0', number),
        choiceField(
          { name: 'load', label: 'Load it is flown at' },
          LOADS.map((value) => ({ value, text: sentence(LOAD_MEANINGS[value].words) })),
          typed.load ?? 'any',
        ),
        textField(
          {
            name: 'opens',
            label: 'The new thing it does for the first time',
            hint: 'Leave it empty where it does nothing new. A flight has one new thing at most.',
          },
          typed.opens ?? '',
        ),
      ],
    },
    {
      title: 'What it waits for, and what it gives',
      fields: [
        textField(
          { name: 'needs', label: 'Tests that come first', hint: 'One a line, by name or title; the list is below.' },
          typed.needs ?? '',
          long,
        ),
        textField(
          { name: 'consumes', label: 'What it uses', hint: 'One a line: what another test gives.' },
          typed.consumes ?? '',
          long,
        ),
        textField(
          { name: 'produces', label: 'What it gives', hint: 'One a line, such as: pump noise record.' },
          typed.produces ?? '',
          long,
        ),
      ],
    },
    {
      title: 'The card',
      fields: [
        textField({ name: 'setup', label: 'Before start-up', hint: 'One a line.' }, typed.setup ?? '', long),
        textField({ name: 'steps', label: 'Steps', hint: 'One a line, in order.' }, typed.steps ?? '', long),
        textField(
          {
            name: 'readings',
            label: 'Readings',
            hint: 'One a line: what | unit | when. Such as: sound level | dBA | each cycle.',
          },
          typed.readings ?? '',
          long,
        ),
        textField({ name: 'pass', label: 'Passed when', hint: 'One a line.', required: true }, typed.pass ?? '', long),
        textField(
          { name: 'source', label: 'Who says so', hint: 'A handbook, a designer, or your own choice.' },
          typed.source ?? '',
        ),
        textField({ name: 'stop', label: 'Stop if', hint: 'One a line.', required: true }, typed.stop ?? '', long),
        textField({ name: 'who', label: 'Your name' }, ''),
      ],
    },
  ];
}

/** Names of tests as a person knows them, the short one beside it where a chain needs it. */
function withTitles(words: string, titles: ReadonlyMap<string, string>): string {
  return words.replace(/[a-z0-9]+(?:-[a-z0-9]+)+/g, (id) => {
    const title = titles.get(id);
    return title === undefined ? id : `“${title}”`;
  });
}
