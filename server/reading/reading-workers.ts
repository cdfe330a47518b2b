/** Threads that read logs: started when the first large log comes, kept for the next one, ended when long idle. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';

/** More of them wait for the memory, not for a processor. */
const MOST_THREADS = 8;
const IDLE_MS = 5 * 60_000;

const idle: Worker[] = [];
const endings = new WeakMap<Worker, NodeJS.Timeout>();

/** @returns threads that a reading may use at once */
export function readingThreads(): number {
  return Math.min(MOST_THREADS, availableParallelism());
}

/** A thread for one reading; it does not keep the process alive. */
export function takeWorker(): Worker {
  const known = idle.pop();
  if (known) {
    clearTimeout(endings.get(known));
    forgetListeners(known);
    return known;
  }
  const worker = new Worker(new URL('./worker.mjs', import.meta.url));
  worker.unref();
  return worker;
}

/** Only those of a reading: a worker has some of its own, without which it is not heard any more. */
export function forgetListeners(worker: Worker): void {
  for (const name of ['message', 'error', 'exit']) worker.removeAllListeners(name);
}

/** It has done its part and waits for another. */
export function giveBack(worker: Worker): void {
  forgetListeners(worker);
  const forget = () => {
    clearTimeout(endings.get(worker));
    const place = idle.indexOf(worker);
    if (place >= 0) idle.splice(place, 1);
  };
  worker.once('error', forget);
  worker.once('exit', forget);
  worker.unref();
  idle.push(worker);
  const ending = setTimeout(() => {
    forget();
    void worker.terminate();
  }, IDLE_MS);
  ending.unref();
  endings.set(worker, ending);
}
