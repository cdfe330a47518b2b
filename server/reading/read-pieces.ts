/** The pieces of one file, read by whichever thread is free: each takes the next one until none is left. */
import { closeSync, openSync, readSync } from 'node:fs';
import type { MessagePort } from 'node:worker_threads';
import { buffersOfPiece, type PiecePlan, type PieceRows, readPiece } from '../../analysis/logs/index.ts';

/** What all threads that read a file share. */
export interface PieceTask {
  path: string;
  plan: PiecePlan;
  /** first byte of each piece, and the end of the file */
  bounds: number[];
  /** the piece that is taken next, and the bytes read so far in units of UNIT */
  shared: Int32Array;
}

/** Places in what is shared. */
export const NEXT = 0;
export const DONE = 1;
/** The bytes of a large file would not fit 32 bits. */
export const UNIT = 1024;

/** A thread tells of each piece it has read, and at last that it is through. */
export type FromHelper = { place: number; piece: PieceRows } | { through: true } | { failed: unknown };

/**
 * Read pieces until none is left.
 * @param task the file
 * @param tell takes each piece as it is done
 */
export function readPieces({ path, plan, bounds, shared }: PieceTask, tell: (place: number, piece: PieceRows) => void) {
  const file = openSync(path, 'r');
  try {
    for (;;) {
      const place = Atomics.add(shared, NEXT, 1);
      const [from, to] = [bounds[place], bounds[place + 1]];
      if (from === undefined || to === undefined) return;
      let at = from;
      const fill = (into: Uint8Array): number => {
        const count = readSync(file, into, 0, Math.min(into.length, to - at), at);
        at += count;
        Atomics.add(shared, DONE, Math.ceil(count / UNIT));
        return count;
      };
      const isLast = place === bounds.length - 2;
      const piece = readPiece(plan, { isFirst: place === 0, isLast, size: to - from }, fill);
      // Nothing more is wanted of a file that must be read in one go.
      if (!piece.sound) Atomics.store(shared, NEXT, bounds.length);
      tell(place, piece);
      if (!piece.sound) return;
    }
  } finally {
    closeSync(file);
  }
}

/** Help another thread with its file: it sends the task, and gets the pieces. */
export function helpThrough(port: MessagePort): void {
  const say = (what: FromHelper, transfer: ArrayBuffer[] = []) => port.postMessage(what, transfer);
  port.once('message', (task: PieceTask) => {
    try {
      readPieces(task, (place, piece) => say({ place, piece }, buffersOfPiece(piece)));
      say({ through: true });
    } catch (failed) {
      say({ failed });
    }
  });
}
