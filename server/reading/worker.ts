/** The worker: reads one file and hands the columns over without copying them. */
import { parentPort, workerData } from 'node:worker_threads';
import { buffersOf, parcelOf, type ReadOptions } from '../../analysis/logs/index.ts';
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
const parcel = parcelOf(outcome);
say({ parcel }, buffersOf(parcel));

function say(what: FromWorker, transfer: ArrayBuffer[] = []): void {
  parentPort?.postMessage(what, transfer);
}
