/** The worker: reads one file and hands the columns over without copying them. */
import { parentPort, workerData } from 'node:worker_threads';
import type { ReadOptions } from '../../analysis/logs/index.ts';
import { readLogFile } from './read-log-file.ts';

const { path, options }: { path: string; options: ReadOptions } = workerData;
const outcome = await readLogFile(path, options);
const buffers = new Set<ArrayBuffer>();
for (const values of [
  outcome.table?.time.seconds,
  ...(outcome.table?.channels.map((channel) => channel.values) ?? []),
]) {
  if (values && values.buffer instanceof ArrayBuffer) buffers.add(values.buffer);
}
parentPort?.postMessage(outcome, [...buffers]);
