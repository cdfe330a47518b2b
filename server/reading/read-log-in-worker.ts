/** Reads one log in a worker thread, so that the service goes on answering. */
import { Worker } from 'node:worker_threads';
import { type Parcel, type ReadOptions, type ReadOutcome, unpack } from '../../analysis/logs/index.ts';

/** What the worker says: how far it is, or the reading itself. */
export type FromWorker = { bytes: number } | { parcel: Parcel };

/**
 * @param path where the bytes are
 * @param options name, hash, what a person confirmed
 * @param signal ends the worker
 * @param onProgress told the bytes read so far
 */
export function readLogInWorker(
  path: string,
  options: ReadOptions,
  signal?: AbortSignal,
  onProgress?: (bytes: number) => void,
): Promise<ReadOutcome> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted();
    const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: { path, options } });
    const stop = () => {
      void worker.terminate();
      reject(signal?.reason);
    };
    const leave = () => signal?.removeEventListener('abort', stop);
    signal?.addEventListener('abort', stop, { once: true });
    worker.on('message', (said: FromWorker) => {
      if ('bytes' in said) {
        onProgress?.(said.bytes);
        return;
      }
      leave();
      resolve(unpack(said.parcel));
      void worker.terminate();
    });
    worker.once('error', (error) => {
      leave();
      reject(error);
    });
    worker.once('exit', (code) => {
      leave();
      reject(new Error(`the reading worker ended with code ${code} before its answer`));
    });
  });
}
