/**
 * Raw logs as they came, byte for byte, each in a file named by its own SHA-256: `logs/<first two>/<hash>`. Written
 * and forced to the disk before the journal names them; never changed, never named by what a person typed.
 */
import { createHash, randomBytes } from 'node:crypto';
import { createReadStream, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';

export interface Received {
  sha256: string;
  size: number;
  path: string;
}

/** More bytes came than allowed. */
export class TooManyBytes extends Error {}

/** Where a raw log lies inside its book. */
export function rawLogPlace(sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error('not the hash of a log');
  return `logs/${sha256.slice(0, 2)}/${sha256}`;
}

/** Where a raw log lies on the disk. */
export function rawLogPath(folder: string, sha256: string): string {
  return join(folder, rawLogPlace(sha256));
}

/**
 * Stream bytes to the disk, hashing them on the way.
 * @param folder the book's folder
 * @param stream the bytes
 * @param limit most bytes taken
 * @param watch told the bytes so far; may throw to stop
 * @returns hash, size and place
 * @throws TooManyBytes when the limit is passed; nothing is left behind then
 */
export async function keepRawLog(
  folder: string,
  stream: Readable,
  limit: number,
  watch: (bytes: number) => void = () => {},
): Promise<Received> {
  const arriving = join(folder, 'logs', 'arriving');
  mkdirSync(arriving, { recursive: true });
  const temporary = join(arriving, randomBytes(12).toString('hex'));
  const file = await open(temporary, 'wx');
  try {
    const { sha256, size } = await pour(stream, file, limit, watch);
    const path = rawLogPath(folder, sha256);
    mkdirSync(dirname(path), { recursive: true });
    await rename(temporary, path);
    await forceFolder(dirname(path));
    return { sha256, size, path };
  } catch (error) {
    await file.close().catch(() => {});
    await rm(temporary, { force: true });
    throw error;
  }
}

async function pour(stream: Readable, file: FileHandle, limit: number, watch: (bytes: number) => void) {
  const hash = createHash('sha256');
  let size = 0;
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk);
    size += bytes.length;
    if (size > limit) throw new TooManyBytes(`more than ${limit} bytes`);
    hash.update(bytes);
    await file.writeFile(bytes);
    watch(size);
  }
  await file.sync();
  await file.close();
  return { sha256: hash.digest('hex'), size };
}

/** The name of a new file is on the disk for good only when its folder is too; not every system can do that. */
async function forceFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined);
  await handle?.sync().catch(() => {});
  await handle?.close();
}

/** What an upload that was cut off left behind; called when the book is opened. */
export function sweepArrivals(folder: string): void {
  const arriving = join(folder, 'logs', 'arriving');
  for (const name of listed(arriving)) rmSync(join(arriving, name), { force: true });
}

/** Hash of a file as it lies on the disk now, or null when it is not there. */
export async function hashOfFile(path: string): Promise<string | null> {
  if (!(await stat(path).catch(() => null))) return null;
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk);
  return hash.digest('hex');
}

function listed(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
