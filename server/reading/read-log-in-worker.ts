/** Reads one log in a worker thread, so that the service goes on answering. */
import { Worker } from 'node:worker_threads';
import type { ReadOptions, ReadOutcome } from '../../analysis/logs/index.ts';

/**
 * @param path where the bytes are
 * @param options name, hash, what a person confirmed
 * @param signal ends the worker
 */
export function readLogInWorker(path: string, options: ReadOptions, signal?: AbortSignal): Promise<ReadOutcome> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted();
    const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: { path, options } });
    const stop = () => {
      void worker.terminate();
      reject(signal?.reason);
    };
    signal?.addEventListener('abort', stop, { once: true });
    worker.once('message', (outcome: ReadOutcome) => {
      signal?.removeEventListener('abort', stop);
      resolve(outcome);
      void worker.terminate();
    });
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the reading worker ended with code ${code} before its answer`)));
  });
}
