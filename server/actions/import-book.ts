/** Take in an archive as a new book: checked as it is unpacked beside, then moved into place in one step. */
import { randomBytes } from 'node:crypto';
import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import * as z from 'zod';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { archivedEntrySchema, JOURNAL } from '../book/archive.ts';
import { type Book, openBookFolder } from '../book/book.ts';
import { keepDocument, sha256Of } from '../book/documents.ts';
import { breaksIn, insertRow, type JournalRow } from '../book/journal.ts';
import { type Archive, BadArchive, openArchive } from '../book/open-archive.ts';
import { rawLogPath } from '../book/raw-logs.ts';
import type { Desk } from '../desk.ts';
import { verify } from './verify-book.ts';

export interface ImportedBook {
  id: string;
  /** entries of the journal taken in */
  entries: number;
  logs: number;
}

/**
 * @param path the zip
 * @param watch told files done and files in all; may throw to stop
 * @throws InputProblem `bad-archive`; nothing is left behind then
 */
export async function importBook(
  desk: Desk,
  path: string,
  watch: (done: number, total: number) => void = () => {},
): Promise<ImportedBook> {
  const beside = join(desk.shelf.folder, `.import-${randomBytes(8).toString('hex')}`);
  try {
    const archive = await openArchive(path, desk.settings.archiveLimitBytes);
    try {
      const taken = await unpack(desk, archive, beside, watch);
      const id = desk.shelf.freshId();
      renameSync(beside, join(desk.shelf.folder, id));
      return { id, ...taken };
    } finally {
      archive.close();
    }
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    if (error instanceof BadArchive || error instanceof z.ZodError || error instanceof SyntaxError) {
      throw new InputProblem([problem('bad-archive', `The archive cannot be used: ${wordsOf(error)}.`)]);
    }
    throw error;
  }
}

async function unpack(desk: Desk, archive: Archive, folder: string, watch: (done: number, total: number) => void) {
  const book = openBookFolder(folder, 'import', desk.now);
  try {
    await fill(book, archive, watch);
    const { broken, entries, logs, head } = await verify(book);
    if (broken[0] !== undefined) throw new BadArchive(broken[0]);
    if (head !== archive.manifest.head) throw new BadArchive('its journal does not end where the manifest says');
    return { entries, logs };
  } finally {
    book.close();
  }
}

async function fill(book: Book, archive: Archive, watch: (done: number, total: number) => void): Promise<void> {
  const { files } = archive.manifest;
  const documents: string[] = [];
  for (const [done, file] of files.entries()) {
    watch(done, files.length);
    if (file.path.startsWith('documents/')) documents.push(await documentText(archive, file.path));
    else if (file.path.startsWith('logs/')) await writeLog(book, archive, file.path);
  }
  const entries = z.array(archivedEntrySchema).parse(JSON.parse(await archive.text(JOURNAL)));
  const rows = entries.map((entry) => ({ ...entry, data: JSON.stringify(entry.data) }));
  const first = breaksIn(rows)[0];
  if (first !== undefined) throw new BadArchive(first);
  book.database.transaction(() => {
    for (const json of documents) keepDocument(book.database, json);
    for (const row of rows) replay(book, row);
  });
}

/** The database refuses an entry that names a document, a log or a result which is not there. */
function replay(book: Book, row: JournalRow): void {
  try {
    insertRow(book.database, row);
  } catch (error) {
    throw new BadArchive(`its files do not fit together (entry ${row.seq})`, { cause: error });
  }
}

async function documentText(archive: Archive, path: string): Promise<string> {
  const text = await archive.text(path);
  if (path !== `documents/${sha256Of(text)}.json`) throw new BadArchive(`${path} is not named by its own hash`);
  return text;
}

async function writeLog(book: Book, archive: Archive, path: string): Promise<void> {
  const sha256 = path.split('/').at(-1) ?? '';
  if (archive.manifest.files.find((file) => file.path === path)?.sha256 !== sha256) {
    throw new BadArchive(`${path} is not named by its own hash`);
  }
  const to = rawLogPath(book.folder, sha256);
  mkdirSync(dirname(to), { recursive: true });
  const out = await open(to, 'w');
  try {
    await archive.pour(path, async (bytes) => out.writeFile(bytes));
    await out.sync();
  } finally {
    await out.close();
  }
}

function wordsOf(error: Error): string {
  if (error instanceof z.ZodError) return z.prettifyError(error).replaceAll('\n', ' ');
  return error instanceof SyntaxError ? 'a JSON file in it is damaged' : error.message;
}
