/** Reads one log in threads of its own, so that the service goes on answering: a large one in as many as there are. */
import { MessageChannel } from 'node:worker_threads';
import { type Parcel, type ReadOptions, type ReadOutcome, unpack } from '../../analysis/logs/index.ts';
import { SHARED_ABOVE_BYTES } from './read-in-pieces.ts';
import { forgetListeners, giveBack, readingThreads, takeWorker } from './reading-workers.ts';
import type { ToWorker } from './worker.ts';

/** What the worker says: how far it is, the reading itself, or why there is none. */
export type FromWorker = { bytes: number } | { parcel: Parcel } | { failed: unknown };

/**
 * @param path where the bytes are
 * @param options name, hash, what a person confirmed
 * @param signal ends the threads
 * @param onProgress told the bytes read so far
 */
export async function readLogInWorker(
  path: string,
  options: ReadOptions,
  signal?: AbortSignal,
  onProgress?: (bytes: number) => void,
): Promise<ReadOutcome> {
  signal?.throwIfAborted();
  const threads = (options.sizeBytes ?? 0) > SHARED_ABOVE_BYTES ? readingThreads() : 1;
  const lead = takeWorker();
  const others = Array.from({ length: threads - 1 }, takeWorker);
  const all = [lead, ...others];
  let stop = () => {};
  try {
    const outcome = await new Promise<ReadOutcome>((resolve, reject) => {
      stop = () => reject(signal?.reason);
      signal?.addEventListener('abort', stop, { once: true });
      for (const worker of all) {
        worker.once('error', reject);
        worker.once('exit', (code) => reject(new Error(`a reading thread ended with code ${code} before its answer`)));
      }
      lead.on('message', (said: FromWorker) => {
        if ('bytes' in said) onProgress?.(said.bytes);
        else if ('failed' in said) reject(said.failed);
        else resolve(unpack(said.parcel));
      });
      lead.ref();
      const helpers = others.map((worker) => {
        const { port1, port2 } = new MessageChannel();
        const help: ToWorker = { ask: 'help', port: port1 };
        worker.postMessage(help, [port1]);
        return port2;
      });
      const read: ToWorker = { ask: 'read', path, options, helpers };
      lead.postMessage(read, helpers);
    });
    for (const worker of all) giveBack(worker);
    return outcome;
  } catch (error) {
    for (const worker of all) {
      forgetListeners(worker);
      void worker.terminate();
    }
    throw error;
  } finally {
    signal?.removeEventListener('abort', stop);
  }
}
