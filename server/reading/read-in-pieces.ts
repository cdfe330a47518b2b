/** A large log read by several threads at once. */
import { type FileHandle, open } from 'node:fs/promises';
import type { MessagePort } from 'node:worker_threads';
import {
  HEAD_BYTES,
  joinPieces,
  type PieceRows,
  planPieces,
  type ReadOptions,
  type ReadOutcome,
} from '../../analysis/logs/index.ts';
import { DONE, type FromHelper, type PieceTask, readPieces, UNIT } from './read-pieces.ts';

/** A smaller file is read sooner than it is shared out. */
export const SHARED_ABOVE_BYTES = 16 << 20;
const LARGEST_PIECE = 32 << 20;
const PIECES_A_THREAD = 4;
/** A line longer than this is none. */
const LONGEST_LINE = 1 << 20;
const NEWLINE = 10;

/**
 * @param path where the bytes are
 * @param options name, hash, what a person confirmed
 * @param helpers ports of threads that wait for a task
 * @param onProgress told the bytes read so far
 * @returns the reading, or null where the file must be read in one go
 */
export async function readInPieces(
  path: string,
  options: ReadOptions,
  helpers: readonly MessagePort[],
  onProgress?: (bytes: number) => void,
): Promise<ReadOutcome | null> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const head = new Uint8Array(HEAD_BYTES);
    await file.read(head, 0, HEAD_BYTES, 0);
    const plan = size > SHARED_ABOVE_BYTES ? planPieces(head, options) : null;
    const bounds = plan ? await boundsOf(file, plan.markBytes, size, helpers.length + 1) : null;
    if (!plan || !bounds) return null;
    const shared = new Int32Array(new SharedArrayBuffer(8));
    const task: PieceTask = { path, plan, bounds, shared };
    const pieces: PieceRows[] = [];
    const keep = (place: number, piece: PieceRows): void => {
      pieces[place] = piece;
      onProgress?.(Math.min(size, Atomics.load(shared, DONE) * UNIT));
    };
    const helped = helpers.map((port) => helpFrom(port, task, keep));
    readPieces(task, keep);
    await Promise.all(helped);
    if (pieces.filter((piece) => piece.sound).length < bounds.length - 1) return null;
    return joinPieces(plan, pieces, size, options);
  } finally {
    await file.close();
  }
}

function helpFrom(port: MessagePort, task: PieceTask, keep: (place: number, piece: PieceRows) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    port.on('message', (said: FromHelper) => {
      if ('piece' in said) keep(said.place, said.piece);
      else if ('failed' in said) reject(said.failed);
      else resolve();
    });
    port.once('close', () => reject(new Error('a reading thread ended before its part was done')));
    port.postMessage(task);
  });
}

/** First bytes of the pieces, each that of a line, and the end; null where lines do not end as they should. */
async function boundsOf(file: FileHandle, from: number, size: number, threads: number): Promise<number[] | null> {
  const count = Math.max(threads * PIECES_A_THREAD, Math.ceil(size / LARGEST_PIECE));
  const bounds = [from];
  const some = new Uint8Array(1 << 16);
  for (let k = 1; k < count; k += 1) {
    const wanted = Math.floor((size * k) / count);
    let at = wanted;
    let found = -1;
    while (found < 0 && at < size) {
      if (at - wanted > LONGEST_LINE) return null;
      const { bytesRead } = await file.read(some, 0, some.length, at);
      if (bytesRead === 0) break;
      found = some.subarray(0, bytesRead).indexOf(NEWLINE);
      at += found < 0 ? bytesRead : found + 1;
    }
    if (found >= 0 && at < size && at > (bounds.at(-1) ?? 0)) bounds.push(at);
  }
  return [...bounds, size];
}
