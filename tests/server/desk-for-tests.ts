/** A desk over a folder of its own, removed after the test; its clock steps by a second with each look. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { createBook } from '../../server/actions/create-book.ts';
import { type Desk, type LogReader, openDesk } from '../../server/desk.ts';
import { settingsOf } from '../../server/settings.ts';

export const OUZEL: unknown = JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8'));
export const WRENLET: unknown = JSON.parse(readFileSync('sample-tests/wrenlet/airplane.json', 'utf8'));

/** A folder that is gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'proveout-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that starts on a day of the story and moves on by a second at each look. */
export function steppingClock(start = '2031-05-04T06:00:00Z'): () => Date {
  let time = Date.parse(start);
  return () => {
    time += 1000;
    return new Date(time);
  };
}

const readNothing: LogReader = async () => {
  throw new Error('this test reads no log');
};

export interface DeskForTests {
  settings?: Parameters<typeof settingsOf>[0];
  readLog?: LogReader;
}

/** A desk without books. */
export function emptyDesk({ settings = {}, readLog = readNothing }: DeskForTests = {}): Desk {
  const dataFolder = temporaryFolder();
  const desk = openDesk({
    settings: settingsOf({ dataFolder, logFaults: false, ...settings }),
    readLog,
    now: steppingClock(),
  });
  onTestFinished(() => desk.close());
  return desk;
}

/** A desk with one book: Ouzel. */
export function deskWithOuzel(given: DeskForTests = {}): { desk: Desk; book: string } {
  const desk = emptyDesk(given);
  return { desk, book: createBook(desk, { airplane: OUZEL }, { who: 'Ines Corbeau', why: 'first description' }) };
}

/** A value changed inside plain JSON, the rest as it was. */
export function changed(json: unknown, path: string, value: unknown): unknown {
  const copy: unknown = structuredClone(json);
  const names = path.split('.');
  const last = names.pop() ?? '';
  let here = copy;
  for (const name of names) {
    if (typeof here !== 'object' || here === null) throw new Error(`no ${path}`);
    here = Reflect.get(here, name);
  }
  if (typeof here !== 'object' || here === null) throw new Error(`no ${path}`);
  Reflect.set(here, last, value);
  return copy;
}
