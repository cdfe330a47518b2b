/** Reads one log from the disk in this thread, a piece at a time. */
import { createReadStream } from 'node:fs';
import type { ReadOptions, ReadOutcome } from '../../analysis/logs/index.ts';
import { openReader } from '../../analysis/logs/index.ts';

const PIECE = 1 << 20;

/**
 * @param path where the bytes are
 * @param options name, hash, what a person confirmed
 * @param signal stops between two pieces
 */
export async function readLogFile(path: string, options: ReadOptions, signal?: AbortSignal): Promise<ReadOutcome> {
  const reader = openReader(options);
  for await (const piece of createReadStream(path, { highWaterMark: PIECE })) {
    signal?.throwIfAborted();
    reader.push(piece as Uint8Array);
  }
  return reader.finish();
}
