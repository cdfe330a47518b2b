/** Outings in order, and the hours flown. */
import * as z from 'zod';
import type { Program } from '../../analysis/program/index.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import { count } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { minutesInWords } from '../words/time.ts';
import { typedNumber } from '../words/typed-number.ts';
import type { KeptHours, KeptStatus, PageContext } from './kept.ts';
import { outingName, outingPath } from './outing-words.ts';

export const outingsView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  stages: z.array(
    z.strictObject({
      title: z.string(),
      outings: z.array(
        z.strictObject({
          name: z.string(),
          title: z.string(),
          href: z.string(),
          tests: z.string(),
          minutes: z.string(),
          opens: z.string(),
          status: outcomePart,
        }),
      ),
    }),
  ),
  totals: z.string(),
  hours: z.array(
    z.strictObject({
      date: z.string(),
      outing: z.string(),
      flight: z.string(),
      engine: z.string(),
      landings: z.int(),
      note: z.string(),
    }),
  ),
  hoursAction: z.string(),
  hoursFields: z.array(fieldPart),
});
export type OutingsView = z.infer<typeof outingsView>;

/** What was typed into the hours form, by field. */
export type TypedHours = Partial<Record<'date' | 'outing' | 'flight' | 'engine' | 'landings' | 'note', string>>;

/** The Outings page. */
export function outingsPage(
  program: Program,
  facts: { status: readonly KeptStatus[]; hours: KeptHours },
  { book }: PageContext,
  form: { today: string; typed?: TypedHours; problems?: ProblemPart[] },
  done = '',
): OutingsView {
  const states = new Map(facts.status.map((one) => [one.test, one.status]));
  const { hours } = facts;
  return {
    frame: frameOf('Outings', { question: 'What do we do on each outing?', book, way: 'outings', done }),
    problems: { heading: 'These hours could not be written down', items: form.problems ?? [] },
    stages: program.stages.map(({ stage, title }) => ({
      title,
      outings: program.outings
        .filter((one) => one.stage === stage)
        .map((one) => ({
          name: outingName(one, program),
          title: one.title,
          href: outingPath(book.id, one.number),
          tests: count(one.tests.length, 'test'),
          minutes: minutesInWords(one.minutesTotal),
          opens: one.opens ?? '',
          status: outcomeInWords(statusOfOuting(one.tests.map((id) => states.get(id) ?? 'planned'))),
        })),
    })),
    totals: `${hourText(hours.flightSeconds)} flown, ${hourText(hours.engineSeconds)} with the engine running, ${count(hours.landings, 'landing')}.`,
    hours: [...hours.entries].reverse().map((one) => ({
      date: one.date,
      outing: one.outing,
      flight: hourText(one.flightSeconds),
      engine: hourText(one.engineSeconds),
      landings: one.landings,
      note: one.note,
    })),
    hoursAction: bookPath(book.id, '/hours'),
    hoursFields: hoursFields(form.today, form.typed ?? {}),
  };
}

/** The form for hours, with what was typed. */
function hoursFields(today: string, typed: TypedHours) {
  return [
    textField({ name: 'date', label: 'Day', hint: 'Such as 2031-05-04.', required: true }, typed.date ?? today),
    textField({ name: 'outing', label: 'Outing', hint: 'Such as Flight 3.' }, typed.outing ?? ''),
    textField({ name: 'flight', label: 'Hours in the air', required: true }, typed.flight ?? '0', { number: true }),
    textField({ name: 'engine', label: 'Hours with the engine running', required: true }, typed.engine ?? '', {
      number: true,
    }),
    textField({ name: 'landings', label: 'Landings', required: true }, typed.landings ?? '0', { number: true }),
    textField({ name: 'note', label: 'Note' }, typed.note ?? ''),
  ];
}

export interface ReadHours {
  typed: TypedHours;
  problems: ProblemPart[];
  hours:
    | { date: string; outing: string; flightSeconds: number; engineSeconds: number; landings: number; note: string }
    | undefined;
}

/**
 * What was typed into the hours form.
 * @param at the text of a field, trimmed
 * @returns hours where all of it can be read, else what is wrong; and what was typed
 */
export function readHours(at: (name: string) => string): ReadHours {
  const typed = Object.fromEntries(
    ['date', 'outing', 'flight', 'engine', 'landings', 'note'].map((name) => [name, at(name)]),
  );
  const problems: ProblemPart[] = [];
  const wrong = (message: string, where: string, mend: string) => problems.push({ message, where, mend });
  const date = at('date');
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(Date.parse(date))) {
    wrong(`“${date}” is not a day.`, 'Day', 'Write it as 2031-05-04.');
  }
  const number = (name: string, label: string) => {
    const value = typedNumber(at(name));
    if (value === null || value < 0)
      wrong(`“${at(name)}” is not a number of 0 or more.`, label, 'Write hours with decimals.');
    return value ?? 0;
  };
  const flight = number('flight', 'Hours in the air');
  const engine = number('engine', 'Hours with the engine running');
  const landings = number('landings', 'Landings');
  if (!Number.isInteger(landings)) wrong('Landings are counted whole.', 'Landings', 'Write a whole number.');
  if (flight > engine) {
    wrong(
      'More hours in the air than with the engine running.',
      'Hours with the engine running',
      'Correct one of the two.',
    );
  }
  const hours = {
    date,
    outing: at('outing').slice(0, 80),
    flightSeconds: toSi(flight, 'h'),
    engineSeconds: toSi(engine, 'h'),
    landings,
    note: at('note').slice(0, 2000),
  };
  return { typed, problems, hours: problems.length === 0 ? hours : undefined };
}

/** The state of an outing: that of the test that is least far, where they differ. */
export function statusOfOuting(states: readonly string[]): string {
  const far = ['repeat', 'stale', 'planned', 'briefed', 'flown', 'reduced', 'accepted'];
  return far.find((state) => states.includes(state)) ?? 'planned';
}

function hourText(seconds: number): string {
  return `${fromSi(seconds, 'h').toFixed(1)} h`;
}
