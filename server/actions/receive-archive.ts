/** Receive an archive into a temporary file beside the books. */
import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Desk } from '../desk.ts';

/**
 * @returns where it lies; the caller removes it
 * @throws InputProblem `too-large`
 */
export async function receiveArchive(desk: Desk, stream: Readable): Promise<string> {
  const limit = desk.settings.archiveLimitBytes;
  const path = join(desk.shelf.folder, `.import-${randomBytes(8).toString('hex')}.zip`);
  let size = 0;
  const bounded = async function* (source: AsyncIterable<Buffer>) {
    for await (const chunk of source) {
      size += chunk.length;
      if (size > limit) throw new InputProblem([problem('too-large', `The archive is larger than ${limit} bytes.`)]);
      yield chunk;
    }
  };
  try {
    await pipeline(stream, bounded, createWriteStream(path, { flags: 'wx' }));
    return path;
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}
