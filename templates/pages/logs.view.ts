/** The logs of a book, and the place to drop new ones. */
import * as z from 'zod';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { momentInWords } from '../words/time.ts';
import type { KeptLog, KeptResult, PageContext } from './kept.ts';

export const logsView = z.strictObject({
  frame: framePart,
  action: z.string(),
  uploads: z.string(),
  jobs: z.string(),
  logs: z.array(
    z.strictObject({
      name: z.string(),
      href: z.string(),
      size: z.string(),
      when: z.string(),
      utc: z.string(),
      who: z.string(),
      confirmed: z.boolean(),
      results: z.array(z.strictObject({ text: z.string(), href: z.string() })),
    }),
  ),
});
export type LogsView = z.infer<typeof logsView>;

/** Address of a log's page, with a span of samples where one is meant. */
export function logPath(book: string, log: string, span?: { from: number; to: number }): string {
  const query = span ? `?from=${span.from}&to=${span.to}#overview` : '';
  return bookPath(book, `/logs/${log}${query}`);
}

/** The Logs page. */
export function logsPage(
  logs: readonly KeptLog[],
  results: readonly KeptResult[],
  { book, zone }: PageContext,
  done = '',
): LogsView {
  return {
    frame: frameOf('Logs', {
      question: 'What did the recorders say?',
      book,
      way: 'logs',
      done,
      modules: ['page-drop'],
    }),
    action: bookPath(book.id, '/logs'),
    uploads: `/api${bookPath(book.id, '/logs')}`,
    jobs: `/api${bookPath(book.id, '/jobs')}`,
    logs: [...logs].reverse().map((log) => {
      const moment = momentInWords(log.receivedAt, zone);
      return {
        name: log.name,
        href: logPath(book.id, log.id),
        size: sizeInWords(log.size),
        when: moment.local,
        utc: moment.utc,
        who: log.who,
        confirmed: log.map !== null,
        results: results
          .filter((one) => one.input.logs.includes(log.id))
          .map((one) => ({ text: `Result ${one.number}`, href: bookPath(book.id, `/results/${one.number}`) })),
      };
    }),
  };
}

/** Bytes as a person counts them. */
export function sizeInWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1e6 ? `${(bytes / 1e3).toFixed(0)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
