/** A 20 MB engine-monitor log read and reduced, beside the floor of reading its bytes and scanning for line ends. */
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { readAirplane } from '../../analysis/airplane/index.ts';
import { recordingOf } from '../../analysis/logs/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { longGroundRunCsv } from '../../sample-tests/generate/ground-run.ts';
import { readLogFile } from '../../server/reading/read-log-file.ts';

export async function benchGroundRun(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'ground-run-'));
  const path = join(folder, 'long.csv');
  writeFileSync(path, longGroundRunCsv(20e6));
  const plane = join(import.meta.dirname, '..', '..', 'sample-tests', 'ouzel', 'airplane.json');
  const { airplane } = readAirplane(JSON.parse(readFileSync(plane, 'utf8')));
  const reduction = reductionOf('cooling-ground');
  if (!airplane || !reduction) throw new Error('the demo airplane or the reduction is missing');
  let floor = Number.POSITIVE_INFINITY;
  let reading = Number.POSITIVE_INFINITY;
  let reducing = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3; i++) {
    const start = performance.now();
    const bytes = readFileSync(path);
    let lines = 0;
    for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) lines++;
    const scanned = performance.now();
    const outcome = await readLogFile(path, {
      file: 'long.csv',
      sha256: '0'.repeat(64),
      sizeBytes: statSync(path).size,
    });
    const read = performance.now();
    if (!outcome.table) throw new Error(outcome.problems.map((one) => one.message).join());
    const result = reduction.reduce({ recording: recordingOf([outcome.table]), airplane });
    const reduced = performance.now();
    if (result.status !== 'reduced') throw new Error(`${result.reason} (${lines} lines)`);
    floor = Math.min(floor, scanned - start);
    reading = Math.min(reading, read - scanned);
    reducing = Math.min(reducing, reduced - read);
  }
  rmSync(folder, { recursive: true });
  const all = reading + reducing;
  process.stdout.write(
    `20 MB: read and scan (floor) ${floor.toFixed(0)} ms; reading ${reading.toFixed(0)} ms, reducing ${reducing.toFixed(0)} ms; together ${all.toFixed(0)} ms, ${(all / floor).toFixed(0)} x the floor\n`,
  );
}
