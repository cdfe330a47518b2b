/** A reading thread: it reads a log, or helps another thread with one, and waits for the next. */
import { type MessagePort, parentPort } from 'node:worker_threads';
import { buffersOf, parcelOf, type ReadOptions } from '../../analysis/logs/index.ts';
import { readInPieces } from './read-in-pieces.ts';
import { readLogFile } from './read-log-file.ts';
import type { FromWorker } from './read-log-in-worker.ts';
import { helpThrough } from './read-pieces.ts';

/** What the thread is asked for. */
export type ToWorker =
  | { ask: 'read'; path: string; options: ReadOptions; helpers: MessagePort[] }
  | { ask: 'help'; port: MessagePort };

/** Bytes between two words of progress. */
const OFTEN = 8 << 20;

parentPort?.on('message', (asked: ToWorker) => {
  if (asked.ask === 'help') helpThrough(asked.port);
  else void read(asked);
});

async function read({ path, options, helpers }: Extract<ToWorker, { ask: 'read' }>): Promise<void> {
  let told = 0;
  const onProgress = (bytes: number) => {
    if (bytes - told < OFTEN) return;
    told = bytes;
    say({ bytes });
  };
  try {
    const shared = helpers.length > 0 ? await readInPieces(path, options, helpers, onProgress) : null;
    told = 0;
    const parcel = parcelOf(shared ?? (await readLogFile(path, options, undefined, onProgress)));
    say({ parcel }, buffersOf(parcel));
  } catch (failed) {
    say({ failed });
  } finally {
    for (const port of helpers) port.close();
  }
}

function say(what: FromWorker, transfer: ArrayBuffer[] = []): void {
  parentPort?.postMessage(what, transfer);
}
