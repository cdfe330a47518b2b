/** Reads one log from the disk in this thread, a piece at a time. */
import { open } from 'node:fs/promises';
import { openReader, type ReadOptions, type ReadOutcome } from '../../analysis/logs/index.ts';

const PIECE = 1 << 20;

/**
 * @param path where the bytes are
 * @param options name, hash, what a person confirmed
 * @param signal stops between two pieces
 * @param onProgress told the bytes read so far
 */
export async function readLogFile(
  path: string,
  options: ReadOptions,
  signal?: AbortSignal,
  onProgress?: (bytes: number) => void,
): Promise<ReadOutcome> {
  const reader = openReader(options);
  // One buffer for the whole file: the reader keeps nothing of it.
  const buffer = Buffer.allocUnsafeSlow(PIECE);
  const file = await open(path);
  try {
    let bytes = 0;
    // Nothing that follows can make a log of a file that has failed.
    while (!reader.failed()) {
      signal?.throwIfAborted();
      const { bytesRead } = await file.read(buffer, 0, PIECE);
      if (bytesRead === 0) break;
      reader.push(buffer.subarray(0, bytesRead));
      bytes += bytesRead;
      onProgress?.(bytes);
    }
  } finally {
    await file.close();
  }
  return reader.finish();
}
