/** The worker: reads one file and hands the columns over without copying them. */
import { parentPort, workerData } from 'node:worker_threads';
import type { ReadOptions, ReadOutcome } from '../../analysis/logs/index.ts';
import { readLogFile } from './read-log-file.ts';
import type { FromWorker } from './read-log-in-worker.ts';

/** Bytes between two words of progress. */
const OFTEN = 8 << 20;

const { path, options }: { path: string; options: ReadOptions } = workerData;
let told = 0;
const outcome = await readLogFile(path, options, undefined, (bytes) => {
  if (bytes - told < OFTEN) return;
  told = bytes;
  say({ bytes });
});
say({ outcome }, buffersOf(outcome));

function say(what: FromWorker, transfer: ArrayBuffer[] = []): void {
  parentPort?.postMessage(what, transfer);
}

function buffersOf({ table }: ReadOutcome): ArrayBuffer[] {
  const buffers = new Set<ArrayBuffer>();
  for (const values of [table?.time.seconds, ...(table?.channels.map((channel) => channel.values) ?? [])]) {
    if (values && values.buffer instanceof ArrayBuffer) buffers.add(values.buffer);
  }
  return [...buffers];
}
