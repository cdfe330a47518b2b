/** A large log read by several threads is the log read by one; threads are used again, and end when told to. */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ReadOutcome, readReport } from '../../../analysis/logs/index.ts';
import { SHARED_ABOVE_BYTES } from '../../../server/reading/read-in-pieces.ts';
import { readLogFile } from '../../../server/reading/read-log-file.ts';
import { readLogInWorker } from '../../../server/reading/read-log-in-worker.ts';
import { writeWideLog } from '../../bench/write-wide-log.ts';

const folder = mkdtempSync(join(tmpdir(), 'in-worker-'));
const path = join(folder, 'wide.csv');
const options = () => ({ file: 'wide.csv', sha256: '0'.repeat(64), sizeBytes: statSync(path).size });

beforeAll(() => writeWideLog(path, 110_000));
afterAll(() => rmSync(folder, { recursive: true }));

/** Every number of a reading, folded; two readings that differ anywhere differ in it. */
function folded({ table }: ReadOutcome): number[] {
  const arrays = table ? [table.time.seconds, ...table.channels.map(({ values }) => values)] : [];
  return arrays.map((values) =>
    values.reduce((sum, value, i) => sum + (Number.isNaN(value) ? 1 : value) * ((i % 97) + 1), 0),
  );
}

describe('reading in threads', () => {
  it('gives what reading in this thread gives, time after time', async () => {
    expect(statSync(path).size).toBeGreaterThan(SHARED_ABOVE_BYTES);
    const here = await readLogFile(path, options());
    for (let i = 0; i < 3; i += 1) {
      let told = 0;
      const there = await readLogInWorker(path, options(), undefined, (bytes) => {
        told = bytes;
      });
      expect(readReport(there)).toEqual(readReport(here));
      expect(folded(there)).toEqual(folded(here));
      expect(told).toBeGreaterThan(0);
    }
  }, 60_000);

  it('stops when it is told to, and reads the next file all the same', async () => {
    const stop = new AbortController();
    const reading = readLogInWorker(path, options(), stop.signal);
    stop.abort(new Error('enough'));
    await expect(reading).rejects.toThrow('enough');
    expect((await readLogInWorker(path, options())).rows).toBe(110_000);
  }, 60_000);

  it('says what went wrong', async () => {
    const gone = join(folder, 'gone.csv');
    await expect(readLogInWorker(gone, options())).rejects.toThrow(/ENOENT/);
    await expect(readLogInWorker(gone, { ...options(), sizeBytes: 100 })).rejects.toThrow(/ENOENT/);
  }, 60_000);
});
