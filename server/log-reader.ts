/** Read a log from the disk: small ones here, large ones in a worker, so that the service goes on answering. */
import type { LogReader } from './desk.ts';
import type { Settings } from './settings.ts';

/** @param settings which size is large */
export function readerFor({ workerAboveBytes }: Pick<Settings, 'workerAboveBytes'>): LogReader {
  return async (path, options, signal) => {
    if ((options.sizeBytes ?? 0) > workerAboveBytes) {
      const { readLogInWorker } = await import('./reading/read-log-in-worker.ts');
      return readLogInWorker(path, options, signal);
    }
    const { readLogFile } = await import('./reading/read-log-file.ts');
    return readLogFile(path, options, signal);
  };
}
