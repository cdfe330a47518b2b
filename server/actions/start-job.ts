/** Start long work on a book. What it makes is kept by the deed itself; the job only tells how far it is. */
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import type { Job, Work } from '../jobs.ts';
import type { CardsWanted } from './card-input.ts';
import { keepPlan, keepPrint } from './keep-print.ts';
import { logOf } from './log-of.ts';
import type { PlanWanted } from './print-plan.ts';
import { readStoredLog } from './read-stored-log.ts';
import { type ReduceRequest, reduce } from './reduce.ts';
import { verifyBook } from './verify-book.ts';

export type Deed =
  | { deed: 'read-log'; log: string }
  | (ReduceRequest & By & { deed: 'reduce' })
  | (CardsWanted & By & { deed: 'print' })
  | (PlanWanted & By & { deed: 'print-plan' })
  | { deed: 'verify' };

/** @throws InputProblem `not-found` where the book or the log is not there */
export function startJob(desk: Desk, bookId: string, deed: Deed): Job {
  desk.shelf.open(bookId);
  const { title, work } = workOf(desk, bookId, deed);
  return desk.jobs.start(title, work);
}

function workOf(desk: Desk, bookId: string, deed: Deed): { title: string; work: Work } {
  switch (deed.deed) {
    case 'read-log': {
      const { log } = logOf(desk, bookId, deed.log);
      return {
        title: `Reading ${log.name}`,
        work: async (tell, signal) => {
          tell({ done: 0, total: log.size, words: `reading ${log.name}` });
          const { outcome } = await readStoredLog(desk, bookId, log.id, undefined, signal);
          return { log: log.id, accepted: outcome.accepted, rows: outcome.rows };
        },
      };
    }
    case 'reduce':
      return {
        title: `Reducing ${deed.kind}`,
        work: async (tell, signal) => {
          tell({ done: 0, total: 0, words: 'reading and reducing' });
          const answer = await reduce(desk, bookId, deed, deed, signal);
          return answer.answer === 'stored' ? { answer: 'stored', number: answer.stored.number } : answer;
        },
      };
    case 'print':
      return {
        title: 'Printing cards',
        work: async (tell, signal) => {
          const onProgress = (words: string) => tell({ done: 0, total: 0, words });
          return keepPrint(desk, bookId, deed, deed, { signal, onProgress });
        },
      };
    case 'print-plan':
      return {
        title: 'Printing the plan',
        work: async (tell, signal) => {
          const onProgress = (words: string) => tell({ done: 0, total: 0, words });
          return keepPlan(desk, bookId, deed, deed, { signal, onProgress });
        },
      };
    case 'verify':
      return { title: 'Checking the book', work: async () => verifyBook(desk, bookId) };
  }
}
