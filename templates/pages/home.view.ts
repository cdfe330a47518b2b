/** Home of a book: what is next, and what holds it back. */
import * as z from 'zod';
import { type Program, progressOf } from '../../analysis/program/index.ts';
import { fromSi } from '../../analysis/units/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { minutesInWords, momentInWords } from '../words/time.ts';
import type { KeptHours, KeptResult, KeptSquawk, KeptStatus, PageContext } from './kept.ts';
import { outingName, outingPath } from './outing-words.ts';
import { noticesOf } from './program-notices.ts';
import { resultInRow, resultRow } from './results.view.ts';
import { testPath } from './test.view.ts';

const hold = z.strictObject({ text: z.string(), href: z.string() });

export const homeView = z.strictObject({
  frame: framePart,
  next: z
    .strictObject({
      name: z.string(),
      title: z.string(),
      why: z.string(),
      minutes: z.string(),
      href: z.string(),
      cards: z.string(),
      tests: z.array(
        z.strictObject({ title: z.string(), href: z.string(), status: outcomePart, holds: z.array(hold) }),
      ),
      free: z.boolean(),
    })
    .nullable(),
  progress: z.string(),
  share: z.string(),
  hours: z.strictObject({ flown: z.string(), engine: z.string(), landings: z.string(), words: z.string() }),
  unsettled: z.array(hold),
  squawks: z.array(
    z.strictObject({ number: z.int(), text: z.string(), when: z.string(), who: z.string(), settle: z.string() }),
  ),
  squawkAction: z.string(),
  results: z.array(resultRow),
  resultsHref: z.string(),
  logsHref: z.string(),
  recordHref: z.string(),
  hoursHref: z.string(),
});
export type HomeView = z.infer<typeof homeView>;

export interface HomeFacts {
  program: Program;
  status: readonly KeptStatus[];
  results: readonly KeptResult[];
  squawks: readonly KeptSquawk[];
  hours: KeptHours;
  /** keys of parts on record as done */
  partsDone: ReadonlySet<string>;
  /** parts to be done again whose outing is behind */
  putBack: readonly { test: string; part: number }[];
  /** titles of printed outings that are no longer in the plan */
  stalePaper: readonly string[];
}

/** Results shown on Home; the others stand on their own page. */
const LATEST = 5;

/** Home of a book. */
export function homePage(facts: HomeFacts, context: PageContext, done = ''): HomeView {
  const { program, hours } = facts;
  const { book } = context;
  const states = new Map(facts.status.map((one) => [one.test, one.status]));
  const progress = progressOf(program, states, facts.partsDone);
  const hoursFlown = fromSi(hours.flightSeconds, 'h');
  return {
    frame: frameOf('Home', { question: 'What is next, and what holds it back?', book, way: 'home', done }),
    next: nextPart(facts, context),
    progress: `${progress.accepted} of ${count(progress.of, 'test')} accepted`,
    share: (progress.of === 0 ? 0 : progress.accepted / progress.of).toFixed(3),
    hours: {
      flown: `${hoursFlown.toFixed(1)} h flown${program.hours.assigned === null ? '' : ` of ${program.hours.assigned} h assigned`}`,
      engine: `${fromSi(hours.engineSeconds, 'h').toFixed(1)} h with the engine running`,
      landings: count(hours.landings, 'landing'),
      words: program.hours.words,
    },
    unsettled: unsettled(facts, context),
    squawks: facts.squawks
      .filter((one) => one.open)
      .map(({ number, text, at, who }) => ({
        number,
        text,
        when: momentInWords(at, context.zone).local,
        who,
        settle: bookPath(book.id, `/squawks/${number}/settle`),
      })),
    squawkAction: bookPath(book.id, '/squawks'),
    results: [...facts.results]
      .reverse()
      .slice(0, LATEST)
      .map((one) => resultInRow(one, context)),
    resultsHref: bookPath(book.id, '/results'),
    logsHref: bookPath(book.id, '/logs'),
    recordHref: bookPath(book.id, '/record'),
    hoursHref: bookPath(book.id, '/outings#hours'),
  };
}

function nextPart({ program, status, partsDone }: HomeFacts, { book }: PageContext): HomeView['next'] {
  const states = new Map(status.map((one) => [one.test, one.status]));
  const { next, holds } = progressOf(program, states, partsDone);
  if (!next) return null;
  const tests = program.stages.flatMap((stage) => stage.tests);
  const titleOf = (id: string) => tests.find((one) => one.id === id)?.title ?? id;
  const parts = next.tests.map((id) => {
    const waiting = holds.find((one) => one.test === id);
    return {
      title: titleOf(id),
      href: testPath(book.id, id),
      status: outcomeInWords(states.get(id) ?? 'planned'),
      holds: waiting
        ? [
            ...waiting.for.map((need) => ({ text: `waits for “${titleOf(need)}”`, href: testPath(book.id, need) })),
            ...(waiting.gate === null
              ? []
              : [{ text: `stands behind gate ${waiting.gate}`, href: bookPath(book.id, `/gates/${waiting.gate}`) }]),
            ...waiting.missing.map((meaning) => ({
              text: `its card lacks ${meaning}`,
              href: bookPath(book.id, '/airplane'),
            })),
          ]
        : [],
    };
  });
  return {
    name: outingName(next, program),
    title: next.title,
    why: next.why,
    minutes: minutesInWords(next.minutesTotal),
    href: outingPath(book.id, next.number),
    cards: bookPath(book.id, `/cards?outing=${next.number}`),
    tests: parts,
    free: parts.every((one) => one.holds.length === 0),
  };
}

function waitingInWords({ number, result }: KeptResult): string {
  return result.status === 'refused'
    ? `Result ${number} was refused: ${result.reason ?? ''}.`
    : `Result ${number} waits for your decision.`;
}

/** Results that wait for a word, no longer stand, or are to be done again. */
function unsettled(facts: HomeFacts, { book }: PageContext) {
  const { results, status } = facts;
  const lines: { text: string; href: string }[] = noticesOf({ ...facts, arranged: '' }, book.id).map(
    ({ text, href }) => ({ text, href }),
  );
  for (const one of results) {
    const href = bookPath(book.id, `/results/${one.number}`);
    if (one.status === 'stale')
      lines.push({ text: `Result ${one.number} no longer stands: ${one.stale[0] ?? ''}`, href });
    if (one.status === 'proposed') lines.push({ text: waitingInWords(one), href });
  }
  const noticed = new Set(facts.putBack.map((one) => one.test));
  for (const one of status.filter((test) => test.status === 'repeat' && !noticed.has(test.test))) {
    lines.push({ text: `“${one.title}” is to be repeated.`, href: testPath(book.id, one.test) });
  }
  return lines;
}
