/** What asks for a look at the plan: tests to be put back, sheets that no longer hold, an arrangement of one's own. */
import type { Program } from '../../analysis/program/index.ts';
import { bookPath } from '../parts/frame.view.ts';
import { listInWords } from '../words/list.ts';
import { changePath } from './plan-change.ts';

export interface NoticeFacts {
  program: Program;
  /** parts to be done again whose outing is behind */
  putBack: readonly { test: string; part: number }[];
  /** titles of printed outings that are no longer in the plan */
  stalePaper: readonly string[];
  /** what the arrangement in force was made for, or empty */
  arranged: string;
}

export interface Notice {
  text: string;
  href: string;
  link: string;
}

export function noticesOf({ program, putBack, stalePaper, arranged }: NoticeFacts, book: string): Notice[] {
  const titles = new Map(program.stages.flatMap(({ tests }) => tests.map((test) => [test.id, test.title] as const)));
  const again = [...new Set(putBack.map(({ test }) => `“${titles.get(test) ?? test}”`))];
  const notices: Notice[] = [];
  if (again.length > 0) {
    notices.push({
      text: `${listInWords(again)} ${again.length === 1 ? 'is' : 'are'} to be done again, and the plan has no place for ${again.length === 1 ? 'it' : 'them'} any more: ${again.length === 1 ? 'its outing is' : 'their outings are'} behind.`,
      href: changePath(book, { happened: putBack.map(({ test, part }) => ({ kind: 'repeat', test, part })) }),
      link: 'See the new plan',
    });
  }
  if (stalePaper.length > 0) {
    notices.push({
      text: `Printed sheets that no longer hold: ${listInWords(stalePaper.map((title) => `“${title}”`))}.`,
      href: bookPath(book, '/outings'),
      link: 'Print their outings again',
    });
  }
  if (arranged !== '') notices.push({ text: arranged, href: bookPath(book, '/program/arrange'), link: 'Arrange' });
  return notices;
}
