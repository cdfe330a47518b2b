/** The service over a desk of its own, asked without a socket. */
import type { InjectOptions, LightMyRequestResponse } from 'fastify';
import { onTestFinished } from 'vitest';
import { type App, buildApp } from '../../server/app.ts';
import { type DeskForTests, deskWithOuzel } from './desk-for-tests.ts';

export interface AppForTests extends App {
  book: string;
  /** ask as a page of the service itself would */
  ask(options: InjectOptions & { url: string }): Promise<LightMyRequestResponse>;
}

export async function appWithOuzel(given: DeskForTests = {}): Promise<AppForTests> {
  const { desk, book } = deskWithOuzel(given);
  const app = await buildApp(desk);
  await app.http.ready();
  onTestFinished(() => app.http.close());
  return {
    ...app,
    book,
    ask: (options) => app.http.inject({ ...options, headers: { host: '127.0.0.1:4170', ...options.headers } }),
  };
}

const BOUNDARY = 'x-boundary-of-a-test';

/** A file in a multipart body, with any name. */
export function fileBody(name: string, bytes: Buffer | string): { payload: Buffer; headers: Record<string, string> } {
  const head = `--${BOUNDARY}\r\nContent-Disposition: form-data; name="file"; filename="${name}"\r\nContent-Type: text/csv\r\n\r\n`;
  return {
    payload: Buffer.concat([Buffer.from(head), Buffer.from(bytes), Buffer.from(`\r\n--${BOUNDARY}--\r\n`)]),
    headers: { 'content-type': `multipart/form-data; boundary=${BOUNDARY}` },
  };
}
