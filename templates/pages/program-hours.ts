/** The hours of a program: what they are made of, what was flown, what remains, and the tasks of a task list. */
import * as z from 'zod';
import { type LedgerEntry, ledgerOf, type Program, type TestState } from '../../analysis/program/index.ts';
import { fromSi } from '../../analysis/units/index.ts';
import { bookPath } from '../parts/frame.view.ts';
import { count, listInWords } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import type { KeptHours, KeptStatus } from './kept.ts';

export const hoursSchema = z.strictObject({
  words: z.string(),
  parts: z.array(z.strictObject({ name: z.string(), text: z.string() })),
  ledger: z.string(),
  tasks: z.array(z.strictObject({ title: z.string(), shown: outcomePart, tests: z.string() })),
  href: z.string(),
});

export interface HoursFacts {
  program: Program;
  status: readonly KeptStatus[];
  hours: KeptHours;
}

/** Lines written down as flights: those with time in the air. */
export function flownEntries({ entries }: KeptHours): LedgerEntry[] {
  return entries
    .filter((one) => one.flightSeconds > 0)
    .map((one) => ({ minutes: fromSi(one.flightSeconds, 'min'), landings: one.landings }));
}

/** The part of the Program page that is about hours. */
export function hoursPart(
  { program, hours }: HoursFacts,
  states: ReadonlyMap<string, TestState>,
  book: string,
): z.output<typeof hoursSchema> {
  const { hours: planned } = program;
  const titles = new Map(program.stages.flatMap(({ tests }) => tests.map((test) => [test.id, test.title] as const)));
  return {
    words: planned.words,
    parts: [
      { name: 'On condition', text: `${planned.onCondition} h, the time of the tests themselves` },
      {
        name: 'Around it',
        text: `${planned.overhead} h of take-off, transit, pattern and landing on ${count(planned.flights, 'flight')}`,
      },
      { name: 'Climbs', text: `${planned.climbs} h to tests above the usual height` },
      {
        name: 'Flights',
        text: `${planned.newThings} of ${planned.flights} carry one new thing each: joining them would save hours, and put two new risks into one flight`,
      },
      { name: 'On the ground', text: `${planned.ground} h` },
    ],
    ledger: `${ledgerOf(flownEntries(hours), planned).words}.`,
    tasks: planned.tasks.map(({ title, tests, missing }) => {
      const known = tests.filter((id) => !missing.includes(id));
      const isShown = known.length > 0 && missing.length === 0 && known.every((id) => states.get(id) === 'accepted');
      const named = listInWords(known.map((id) => `“${titles.get(id) ?? id}”`));
      const lacking = missing.length === 0 ? '' : `Not in the program: ${missing.join(', ')}.`;
      const words = [named === '' ? '' : `${named}.`, lacking].filter(Boolean).join(' ');
      return {
        title,
        shown: outcomeInWords(isShown ? 'shown' : 'not shown'),
        tests: words || 'No test is named for it yet.',
      };
    }),
    href: bookPath(book, '/program/hours'),
  };
}
