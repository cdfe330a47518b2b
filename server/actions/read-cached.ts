/**
 * Read a log once: the reading is kept beside the book in `cache/`, named by the bytes, the map and the reader
 * itself. The cache can be thrown away at any time.
 */
import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import {
  bytesOfChannel,
  type LogMap,
  type Parcel,
  parcelOf,
  type ReadOutcome,
  unpack,
} from '../../analysis/logs/index.ts';
import type { StoredLog } from '../book/book-state.ts';
import { sha256Of } from '../book/documents.ts';
import type { Desk } from '../desk.ts';

const MEGABYTE = 1024 * 1024;
/** columns kept in memory, newest last; the newest is kept whatever its size */
const MOST_IN_MEMORY = 256 * MEGABYTE;
/** a larger reading is made again sooner than its copy is fetched from the disk */
const MOST_ON_DISK = 64 * MEGABYTE;

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
  remember(recent, key, outcome);
  return outcome;

  async function readAndKeep(): Promise<ReadOutcome> {
    const options = { file: log.givenName, sha256: log.id, sizeBytes: log.size, ...(map ? { map } : {}) };
    const made = named(await desk.readLog(path, options, signal), log.name);
    if (bytesOf(made) > MOST_ON_DISK) return made;
    mkdirSync(join(folder, 'cache'), { recursive: true });
    const temporary = `${file}.${process.pid}`;
    await writeFile(temporary, serialize(parcelOf(made)));
    await rename(temporary, file);
    return made;
  }
}

function remember(recent: Map<string, ReadOutcome>, key: string, outcome: ReadOutcome): void {
  recent.set(key, outcome);
  let held = [...recent.values()].reduce((sum, one) => sum + bytesOf(one), 0);
  for (const [old, one] of recent) {
    if (held <= MOST_IN_MEMORY || old === key) return;
    recent.delete(old);
    held -= bytesOf(one);
  }
}

function bytesOf({ table }: ReadOutcome): number {
  return (table?.channels ?? []).reduce((sum, channel) => sum + bytesOfChannel(channel), 0);
}

/** The reading under the name the book knows the log by, which may differ from the one it was sent with. */
export function named(outcome: ReadOutcome, file: string): ReadOutcome {
  return { ...outcome, file, table: outcome.table && { ...outcome.table, file } };
}

async function fromDisk(file: string): Promise<ReadOutcome | undefined> {
  try {
    // written by the lines above and by nothing else; anything odd about it and the log is read again
    const parcel: Parcel = deserialize(await readFile(file));
    return unpack(parcel);
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
