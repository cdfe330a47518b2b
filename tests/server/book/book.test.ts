/** A book survives being killed, belongs to one process at a time, and is refused when it is newer than the program. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createBook } from '../../../server/actions/create-book.ts';
import { listBooks } from '../../../server/actions/list-books.ts';
import { verify } from '../../../server/actions/verify-book.ts';
import { openBookFolder } from '../../../server/book/book.ts';
import { openDatabase } from '../../../server/book/database.ts';
import { storedSquawks } from '../../../server/book/read-state.ts';
import { openShelf } from '../../../server/book/shelf.ts';
import { emptyDesk, OUZEL, steppingClock, temporaryFolder } from '../desk-for-tests.ts';

const now = steppingClock();
const WRITER = 'tests/server/book/writer-to-kill.mjs';

/** Start the writer on a folder; resolves once it has the book open. */
async function writerOn(folder: string) {
  const child: ChildProcess = spawn(process.execPath, [WRITER, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  // a test that fails or runs out of time must not leave a writer behind that writes for ever
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  let said = '';
  child.stdout?.on('data', (chunk) => {
    said += String(chunk);
  });
  const until = async (enough: () => boolean) => {
    while (!enough()) {
      if (child.exitCode !== null) throw new Error(`the writer stopped: ${child.exitCode}`);
      await new Promise((resolve) => setTimeout(resolve, 2));
    }
  };
  await until(() => said.includes('open\n'));
  return {
    until,
    acknowledged: () => said.split('\n').slice(1, -1).map(Number),
    kill: async () => {
      child.kill('SIGKILL');
      await once(child, 'close');
    },
  };
}

describe('a book whose process is killed', () => {
  it('holds everything that was acknowledged, whole, after each of five kills', { timeout: 60_000 }, async () => {
    const folder = temporaryFolder();
    for (const writes of [1, 7, 40, 13, 90]) {
      const writer = await writerOn(folder);
      await writer.until(() => writer.acknowledged().length >= writes);
      await writer.kill();
      const book = openBookFolder(folder, 'killed', now);
      const stored = storedSquawks(book).map((one) => one.number);
      const { broken } = await verify(book);
      book.close();
      expect(broken).toEqual([]);
      expect(stored.length).toBeGreaterThanOrEqual(Math.max(...writer.acknowledged()));
      expect(stored).toEqual(stored.map((_, index) => index + 1));
    }
  });

  it('is free for the next process, and its half-received logs are swept', async () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'logs/arriving'), { recursive: true });
    writeFileSync(join(folder, 'logs/arriving/0123'), 'half a lo');
    const writer = await writerOn(folder);
    await writer.kill();
    expect(existsSync(join(folder, 'book.lock'))).toBe(true);
    openBookFolder(folder, 'next', now).close();
    expect(readdirSync(join(folder, 'logs/arriving'))).toEqual([]);
    expect(existsSync(join(folder, 'book.lock'))).toBe(false);
  });
});

describe('an import that was killed', () => {
  it('is swept after a day, not while it may be in work', () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, '.import-old'));
    mkdirSync(join(folder, '.import-young'));
    const day = 24 * 3600;
    utimesSync(join(folder, '.import-old'), Date.now() / 1000 - day - 60, Date.now() / 1000 - day - 60);
    const shelf = openShelf(folder, () => new Date());
    expect(readdirSync(folder)).toEqual(['.import-young']);
    expect(shelf.ids()).toEqual([]);
  });
});

describe('a book in use', () => {
  it('is refused to another process, which is told by whom', async () => {
    const folder = temporaryFolder();
    const writer = await writerOn(folder);
    const pid = readFileSync(join(folder, 'book.lock'), 'utf8').trim();
    expect(() => openBookFolder(folder, 'second', now)).toThrow(
      new RegExp(`open in another process \\(number ${pid}\\)`),
    );
    await writer.kill();
  });

  it('is refused to a second shelf of the same process, listed with the reason, and free once closed', async () => {
    const desk = emptyDesk();
    createBook(desk, { id: 'ouzel', airplane: OUZEL });
    const second = openShelf(desk.settings.dataFolder, now);
    expect(listBooks({ ...desk, shelf: second })).toMatchObject([{ id: 'ouzel', problems: [{ code: 'book-in-use' }] }]);
    desk.shelf.close();
    expect(listBooks({ ...desk, shelf: second })).toMatchObject([{ id: 'ouzel', name: 'Ouzel', problems: [] }]);
    second.close();
  });
});

describe('a book moved or made by another version', () => {
  it('is the same book in another folder', async () => {
    const desk = emptyDesk();
    const id = createBook(desk, { airplane: OUZEL });
    desk.shelf.close();
    const elsewhere = join(temporaryFolder(), 'elsewhere');
    cpSync(join(desk.settings.dataFolder, id), elsewhere, { recursive: true });
    const book = openBookFolder(elsewhere, 'elsewhere', now);
    expect((await verify(book)).broken).toEqual([]);
    book.close();
  });

  it('newer than the program is refused, not touched', () => {
    const folder = temporaryFolder();
    openBookFolder(folder, 'new', now).close();
    const database = openDatabase(join(folder, 'book.db'));
    database.exec('PRAGMA user_version = 999');
    database.close();
    const bytes = readFileSync(join(folder, 'book.db'));
    expect(() => openBookFolder(folder, 'new', now)).toThrow('newer version');
    expect(readFileSync(join(folder, 'book.db')).equals(bytes)).toBe(true);
  });

  it('has no name that a person gave', () => {
    const desk = emptyDesk();
    expect(createBook(desk, { airplane: OUZEL })).toMatch(/^book-[0-9a-f]{10}$/);
    for (const id of ['..', '../x', 'a/b', 'A', '', '.hidden', 'x'.repeat(41)]) {
      expect(() => desk.shelf.open(id)).toThrow('no such book');
      expect(() => desk.shelf.make(id)).toThrow('no name for');
    }
  });
});
