/**
 * Read a log once: the reading is kept beside the book in `cache/`, named by the bytes, the map and the reader
 * itself. The cache can be thrown away at any time.
 */
import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { LogMap } from '../../analysis/logs/log-map.ts';
import type { ReadOutcome } from '../../analysis/logs/read-outcome.ts';
import type { StoredLog } from '../book/book-state.ts';
import { sha256Of } from '../book/documents.ts';
import type { Desk } from '../desk.ts';

/** Readings kept in memory, newest last. */
const RECENT = 6;

/**
 * @param folder the book's folder
 * @param path the raw log
 * @param map what its columns are, or null
 */
export async function readCached(
  desk: Desk,
  folder: string,
  path: string,
  log: Pick<StoredLog, 'id' | 'name' | 'givenName' | 'size'>,
  map: LogMap | null,
  signal?: AbortSignal,
): Promise<ReadOutcome> {
  const key = sha256Of(JSON.stringify([log.id, log.name, log.givenName, map, readerPrint()]));
  const recent = desk.recentReadings;
  const remembered = recent.get(key);
  if (remembered) return remembered;

  const file = join(folder, 'cache', `${key}.reading`);
  const outcome = (await fromDisk(file)) ?? (await readAndKeep());
  recent.set(key, outcome);
  for (const old of [...recent.keys()].slice(0, -RECENT)) recent.delete(old);
  return outcome;

  async function readAndKeep(): Promise<ReadOutcome> {
    const options = { file: log.givenName, sha256: log.id, sizeBytes: log.size, ...(map ? { map } : {}) };
    const made = named(await desk.readLog(path, options, signal), log.name);
    mkdirSync(join(folder, 'cache'), { recursive: true });
    const temporary = `${file}.${process.pid}`;
    await writeFile(temporary, serialize(made));
    await rename(temporary, file);
    return made;
  }
}

/** The reading under the name the book knows the log by, which may differ from the one it was sent with. */
export function named(outcome: ReadOutcome, file: string): ReadOutcome {
  return { ...outcome, file, table: outcome.table && { ...outcome.table, file } };
}

async function fromDisk(file: string): Promise<ReadOutcome | undefined> {
  try {
    // written by the lines above and by nothing else; anything odd about it and the log is read again
    const outcome: ReadOutcome = deserialize(await readFile(file));
    return outcome;
  } catch {
    return undefined;
  }
}

let print: string | undefined;

/** The reader as it stands: a change of its files makes every kept reading worthless. */
function readerPrint(): string {
  print ??= sha256Of(
    ['logs', 'units', 'remarks']
      .map((room) => join(import.meta.dirname, '../../analysis', room))
      .flatMap((room) => readdirSync(room, { recursive: true, encoding: 'utf8' }).map((name) => join(room, name)))
      .sort()
      .map((file) => `${file} ${statSync(file).size} ${statSync(file).mtimeMs}`)
      .join('\n'),
  );
  return print;
}
