/** Write a book's archive as a stream, so that logs of any size pass through without being held. */
import { stat } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import { AIRPLANE, JOURNAL, MANIFEST, type Manifest, README, README_TEXT } from './archive.ts';
import type { Book } from './book.ts';
import { identity, logs } from './current-state.ts';
import { allDocuments, sha256Of } from './documents.ts';
import { journalRows } from './journal.ts';
import { rawLogPath, rawLogPlace } from './raw-logs.ts';
import { airplaneOf } from './read-state.ts';

/** Logs are large and pressed quickly; the rest is small. */
const LEVEL = { logs: 1, json: 6 };

/**
 * @param book an open book, verified
 * @param at time of the export
 * @returns the bytes of the zip
 */
export async function writeArchive(book: Book, at: Date): Promise<Readable> {
  const { database, folder } = book;
  const rows = journalRows(database);
  const airplane = airplaneOf(book);
  const texts = new Map<string, string>([
    [README, README_TEXT],
    [AIRPLANE, `${JSON.stringify(airplane.file, null, 2)}\n`],
    [
      JOURNAL,
      `${JSON.stringify(
        rows.map((row) => ({ ...row, data: JSON.parse(row.data) })),
        null,
        1,
      )}\n`,
    ],
    ...allDocuments(database).map(({ sha256, json }) => [`documents/${sha256}.json`, json] as const),
  ]);
  const raw = logs(database).map(({ sha256 }) => ({ sha256, from: rawLogPath(folder, sha256) }));

  const files: Manifest['files'] = [...texts].map(([path, text]) => ({
    path,
    size: Buffer.byteLength(text),
    sha256: sha256Of(text),
  }));
  for (const { sha256, from } of raw) {
    files.push({ path: rawLogPlace(sha256), size: (await stat(from)).size, sha256 });
  }
  const manifest: Manifest = {
    format: 'proveout-archive-1',
    uid: identity(database).uid,
    airplane: airplane.parsed?.name ?? '',
    exportedAt: at.toISOString(),
    head: rows.at(-1)?.hash ?? '',
    files,
  };

  const zip = new ZipFile();
  const json = { mtime: at, compressionLevel: LEVEL.json };
  zip.addBuffer(Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`), MANIFEST, json);
  for (const [path, text] of texts) zip.addBuffer(Buffer.from(text), path, json);
  for (const { sha256, from } of raw) {
    zip.addFile(from, rawLogPlace(sha256), { mtime: at, compressionLevel: LEVEL.logs });
  }
  zip.end();
  return Readable.from(zip.outputStream);
}
