/** Export and import: nothing lost either way, and nothing taken in that is not what it says. */
import { createWriteStream, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { describe, expect, it } from 'vitest';
import { ZipFile } from 'yazl';
import { exportBook } from '../../../server/actions/export-book.ts';
import { importBook } from '../../../server/actions/import-book.ts';
import { logHours } from '../../../server/actions/log-hours.ts';
import { logOf } from '../../../server/actions/log-of.ts';
import { markTest } from '../../../server/actions/mark-test.ts';
import { openBook } from '../../../server/actions/open-book.ts';
import { openSquawk } from '../../../server/actions/open-squawk.ts';
import { receiveLog } from '../../../server/actions/receive-log.ts';
import { saveAirplane } from '../../../server/actions/save-airplane.ts';
import { undo } from '../../../server/actions/undo.ts';
import { verifyBook } from '../../../server/actions/verify-book.ts';
import { sha256Of } from '../../../server/book/documents.ts';
import { journalRows } from '../../../server/book/journal.ts';
import { openArchive } from '../../../server/book/open-archive.ts';
import type { Desk } from '../../../server/desk.ts';
import { changed, deskWithOuzel, emptyDesk, OUZEL, temporaryFolder } from '../desk-for-tests.ts';

const LIMIT = 1e9;

/** A book in which something of everything happened. */
async function livedIn(): Promise<{ desk: Desk; book: string; log: string; bytes: Buffer }> {
  const { desk, book } = deskWithOuzel();
  const bytes = Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 7) % 256));
  const { log } = await receiveLog(desk, book, Readable.from([bytes]), 'run.csv');
  saveAirplane(desk, book, changed(OUZEL, 'limits.coolant.caution.value', 106), { why: 'new sender' });
  undo(desk, book, 4);
  openSquawk(desk, book, 'left brake drags – “again”, 1 €');
  await markTest(desk, book, 'open-inspection', 'flown', 'as the card says');
  const hours = { date: '2031-05-04', outing: 'Flight 1', flightSeconds: 1800.5, engineSeconds: 2400, landings: 2 };
  logHours(desk, book, { ...hours, note: '' });
  return { desk, book, log: log.id, bytes };
}

async function exported(desk: Desk, book: string): Promise<string> {
  const { stream, fileName } = await exportBook(desk, book);
  const path = join(temporaryFolder(), fileName);
  await pipeline(stream, createWriteStream(path));
  return path;
}

/** A zip of these files, with a manifest that fits them unless another is given. */
async function zipOf(files: Record<string, string>, manifest?: object, mode = 0o100644): Promise<string> {
  const zip = new ZipFile();
  const list = Object.entries(files).map(([path, text]) => ({
    path,
    size: Buffer.byteLength(text),
    sha256: sha256Of(text),
  }));
  const usual = { format: 'proveout-archive-1', uid: 'u', airplane: '', exportedAt: '', head: '', files: list };
  zip.addBuffer(Buffer.from(JSON.stringify({ ...usual, ...manifest })), 'manifest.json');
  for (const [path, text] of Object.entries(files)) zip.addBuffer(Buffer.from(text), path, { mode });
  zip.end();
  const path = join(temporaryFolder(), 'made.zip');
  await pipeline(Readable.from(zip.outputStream), createWriteStream(path));
  return path;
}

describe('an exported book', () => {
  it('comes back whole: state, journal, hashes and bytes', async () => {
    const { desk, book, log, bytes } = await livedIn();
    const other = emptyDesk();
    const { id } = await importBook(other, await exported(desk, book));
    const [before, after] = [await openBook(desk, book), await openBook(other, id)];
    expect({ ...after, id: book }).toEqual(before);
    const rows = (from: Desk, at: string) => journalRows(from.shelf.open(at).database);
    expect(rows(other, id)).toEqual(rows(desk, book));
    expect(readFileSync(logOf(other, id, log).path).equals(bytes)).toBe(true);
    expect((await verifyBook(other, id)).broken).toEqual([]);
  });

  it('comes back the same from an export of the import', async () => {
    const { desk, book } = await livedIn();
    const other = emptyDesk();
    const first = await importBook(other, await exported(desk, book));
    const again = await importBook(other, await exported(other, first.id));
    expect(again.id).not.toBe(first.id);
    const [one, two] = [await openBook(other, first.id), await openBook(other, again.id)];
    expect({ ...two, id: one.id }).toEqual(one);
  });

  it('is plain JSON and the original files', async () => {
    const { desk, book, log, bytes } = await livedIn();
    const archive = await openArchive(await exported(desk, book), LIMIT);
    expect(JSON.parse(await archive.text('airplane.json'))).toEqual(OUZEL);
    expect(JSON.parse(await archive.text('journal.json'))).toHaveLength(8);
    const parts: Buffer[] = [];
    await archive.pour(`logs/${log.slice(0, 2)}/${log}`, async (part) => void parts.push(part));
    archive.close();
    expect(Buffer.concat(parts).equals(bytes)).toBe(true);
  });

  it('is not made of a damaged book', async () => {
    const { desk, book } = await livedIn();
    desk.shelf.open(book).database.exec('UPDATE squawk SET open = 0');
    await expect(exportBook(desk, book)).rejects.toThrow('not what the journal says');
  });
});

describe('an archive that is not what it says', () => {
  const refused = async (path: string, says: RegExp) => {
    const desk = emptyDesk();
    await expect(importBook(desk, path)).rejects.toThrow(says);
    expect(readdirSync(desk.settings.dataFolder)).toEqual([]);
  };

  it('no zip', async () => refused('sample-tests/ouzel/airplane.json', /not a zip file/));
  it('no manifest', async () => {
    const zip = new ZipFile();
    zip.addBuffer(Buffer.from('{}'), 'journal.json');
    zip.end();
    const path = join(temporaryFolder(), 'made.zip');
    await pipeline(Readable.from(zip.outputStream), createWriteStream(path));
    await refused(path, /no manifest/);
  });
  it('another format', async () => refused(await zipOf({}, { format: 'other' }), /cannot be used/));
  it('a name that does not belong', async () =>
    refused(await zipOf({ 'book.db': 'x' }), /does not belong|cannot be used/));
  it('a link', async () => refused(await zipOf({ 'journal.json': '/etc/passwd' }, {}, 0o120777), /link/));
  it('a file the manifest does not name', async () =>
    refused(await zipOf({ 'journal.json': '[]' }, { files: [] }), /not in the manifest/));
  it('a size beyond the manifest', async () => {
    const files = [{ path: 'journal.json', size: 1, sha256: sha256Of('[]') }];
    await refused(await zipOf({ 'journal.json': '[]' }, { files }), /larger than the manifest/);
  });
  it('another hash', async () => {
    const files = [{ path: 'journal.json', size: 2, sha256: sha256Of('{}') }];
    await refused(await zipOf({ 'journal.json': '[]' }, { files }), /not what the manifest says/);
  });
  it('more than is allowed altogether', async () => {
    const files = [{ path: 'journal.json', size: 1e15, sha256: sha256Of('[]') }];
    await refused(await zipOf({ 'journal.json': '[]' }, { files }), /more than the/);
  });
  it('a document under another name', async () =>
    refused(
      await zipOf({ 'journal.json': '[]', [`documents/${'0'.repeat(64)}.json`]: '{}' }),
      /named by its own hash/,
    ));
  it('a broken chain', async () => {
    const { desk, book } = await livedIn();
    const archive = await openArchive(await exported(desk, book), LIMIT);
    const journal = await archive.text('journal.json');
    archive.close();
    await refused(await zipOf({ 'journal.json': journal.replace('left brake', 'right brake') }), /was changed/);
  });
  it('a journal that names what is not there', async () => {
    const { desk, book } = await livedIn();
    const archive = await openArchive(await exported(desk, book), LIMIT);
    const journal = await archive.text('journal.json');
    archive.close();
    await refused(await zipOf({ 'journal.json': journal }), /do(es)? not fit together/);
  });
});
