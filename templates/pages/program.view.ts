/** The program as a list: what is done, in which order, and why. */
import * as z from 'zod';
import type { Program, ProgramTest } from '../../analysis/program/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { problemsPart } from '../parts/remarks.view.ts';
import { count } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { minutesInWords, momentInWords } from '../words/time.ts';
import type { KeptLeftOut, PageContext } from './kept.ts';
import { outingName, outingPath } from './outing-words.ts';
import { filterChoices, filterPart, filterTakes, type ProgramFilter } from './program-filter.ts';
import { type HoursFacts, hoursPart, hoursSchema } from './program-hours.ts';
import { type NoticeFacts, noticesOf } from './program-notices.ts';
import { testPath } from './test.view.ts';

export const programView = z.strictObject({
  frame: framePart,
  summary: z.string(),
  hours: hoursSchema,
  notices: z.array(z.strictObject({ text: z.string(), href: z.string(), link: z.string() })),
  problems: problemsPart,
  arrange: z.string(),
  addOwn: z.string(),
  filters: z.array(filterPart),
  filtered: z.string(),
  stages: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      count: z.string(),
      cards: z.string(),
      gate: z.strictObject({ text: z.string(), href: z.string() }).nullable(),
      tests: z.array(
        z.strictObject({
          position: z.int(),
          title: z.string(),
          href: z.string(),
          purpose: z.string(),
          because: z.string(),
          why: z.string(),
          own: z.boolean(),
          waits: z.string(),
          outing: z.strictObject({ text: z.string(), href: z.string() }),
          minutes: z.string(),
          missing: z.string(),
          status: outcomePart,
        }),
      ),
    }),
  ),
  leftOut: z.array(
    z.strictObject({
      title: z.string(),
      reason: z.string(),
      instead: z.string(),
      when: z.string(),
      action: z.string(),
    }),
  ),
  notApplicable: z.array(z.strictObject({ title: z.string(), reason: z.string() })),
  cards: z.string(),
});
export type ProgramView = z.infer<typeof programView>;

export interface ProgramFacts extends HoursFacts, NoticeFacts {
  ownProblems: readonly { message: string; mend: string }[];
  leftOut: readonly KeptLeftOut[];
}

/** The Program page. */
export function programPage(facts: ProgramFacts, filter: ProgramFilter, context: PageContext, done = ''): ProgramView {
  const { program, status } = facts;
  const { book } = context;
  const states = new Map(status.map((one) => [one.test, one.status]));
  const all = program.stages.flatMap((stage) => stage.tests);
  const wanted = (test: ProgramTest) => filterTakes(filter, test, states.get(test.id) ?? 'planned');
  const kept = all.filter(wanted);
  return {
    frame: frameOf('Program', { question: 'What do we do, in which order, and why?', book, way: 'program', done }),
    summary: `${count(all.length, 'test')} in ${count(program.outings.length, 'outing')}, ${count(program.hours.flights, 'flight')} among them.`,
    hours: hoursPart(facts, states, book.id),
    notices: noticesOf(facts, book.id),
    problems: {
      heading: 'Tests of your own that are not in the program',
      items: facts.ownProblems.map(({ message, mend }) => ({ message, where: '', mend })),
    },
    arrange: bookPath(book.id, '/program/arrange'),
    addOwn: bookPath(book.id, '/program/own'),
    filters: filterChoices(program, filter),
    filtered: kept.length === all.length ? '' : `${kept.length} of ${all.length} shown.`,
    stages: program.stages
      .map(({ stage, title, tests }) => {
        const shown = tests.filter(wanted);
        const gate = program.gates.find((one) => one.before === stage);
        return {
          id: stage,
          title,
          count: count(tests.length, 'test'),
          cards: bookPath(book.id, `/cards?stage=${stage}`),
          gate: gate ? { text: `Gate ${gate.id}: ${gate.title}`, href: bookPath(book.id, `/gates/${gate.id}`) } : null,
          tests: shown.map((test) => testRow(test, program, states.get(test.id) ?? 'planned', book.id)),
        };
      })
      .filter((stage) => stage.tests.length > 0),
    leftOut: facts.leftOut.map((one) => ({
      title: program.notApplicable.find((other) => other.id === one.test)?.title ?? one.test,
      reason: one.reason,
      instead: one.instead,
      when: `${momentInWords(one.at, context.zone).local}${one.who === '' ? '' : `, ${one.who}`}`,
      action: `${testPath(book.id, one.test)}/left-out`,
    })),
    notApplicable: program.notApplicable
      .filter((one) => one.by === 'airplane')
      .map(({ title, reason }) => ({ title, reason })),
    cards: bookPath(book.id, '/cards'),
  };
}

function testRow(test: ProgramTest, program: Program, status: string, book: string) {
  const outing = program.outings.find((one) => one.number === test.outing);
  return {
    position: test.position,
    title: test.title,
    href: testPath(book, test.id),
    purpose: test.purpose,
    because: test.because,
    why: test.why,
    own: test.own,
    waits: `Needs ${test.needs.length}, unlocks ${test.unlocks.length}.`,
    outing: outing
      ? { text: outingName(outing, program), href: outingPath(book, outing.number) }
      : { text: 'not packed', href: bookPath(book, '/outings') },
    minutes: minutesInWords(test.flightMinutes + test.groundMinutes),
    missing: test.missing.length === 0 ? '' : `${count(test.missing.length, 'number')} missing for its card`,
    status: outcomeInWords(status),
  };
}
