/** Read a log from the disk: small ones here, large ones in a worker, so that the service goes on answering. */
import type { LogReader } from './desk.ts';
import type { Settings } from './settings.ts';

/** @param settings which size is large */
export function readerFor({ workerAboveBytes }: Pick<Settings, 'workerAboveBytes'>): LogReader {
  return async (path, options, signal) => {
    const isLarge = (options.sizeBytes ?? 0) > workerAboveBytes;
    const read = await readerIn(isLarge ? 'read-log-in-worker' : 'read-log-file');
    return read(path, options, signal);
  };
}

/** Each file of the reading room has one reader, under the file's own name. */
async function readerIn(file: 'read-log-file' | 'read-log-in-worker'): Promise<LogReader> {
  const room: { readLogFile: LogReader; readLogInWorker: LogReader } = await import(
    new URL(`./reading/${file}.ts`, import.meta.url).href
  );
  return file === 'read-log-file' ? room.readLogFile : room.readLogInWorker;
}
