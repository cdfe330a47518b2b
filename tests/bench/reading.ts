/** Reading a log: ours beside two floors (read and newline scan; a loop that looks at every byte) and beside papaparse alone. */
import { mkdtempSync, openSync, readFileSync, readSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import Papa from 'papaparse';
import { readLogFile } from '../../server/reading/read-log-file.ts';

const ROWS = Number(process.env.BENCH_ROWS ?? 300_000);
const COLUMNS = 40;

export async function benchReading(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'reading-'));
  const path = join(folder, 'wide.csv');
  writeWide(path);
  const megabytes = statSync(path).size / 1e6;
  const newline = await best(() => scanNewlines(path));
  const everyByte = await best(() => lookAtBytes(path));
  const papa = await best(() => parseWithPapa(path), 1);
  const before = process.memoryUsage().rss;
  let peak = before;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage().rss);
  }, 20);
  const ours = await best(async () => {
    const outcome = await readLogFile(path, {
      file: 'wide.csv',
      sha256: '0'.repeat(64),
      sizeBytes: statSync(path).size,
    });
    if (outcome.rows !== ROWS) throw new Error(`${outcome.rows} rows of ${ROWS}`);
  }, 2);
  clearInterval(watch);
  peak = Math.max(peak, process.memoryUsage().rss);
  rmSync(folder, { recursive: true });
  const lines = [
    `${megabytes.toFixed(0)} MB, ${ROWS} rows x ${COLUMNS} columns`,
    `read and newline scan (floor) ${newline.toFixed(2)} s; every byte looked at in JavaScript ${everyByte.toFixed(2)} s; papaparse alone ${papa.toFixed(2)} s; ours, checks and flags on, ${ours.toFixed(2)} s`,
    `ours: ${((100 * everyByte) / ours).toFixed(0)} % of the every-byte loop's rate; ${(papa / ours).toFixed(1)} x papaparse alone; ${(ours / newline).toFixed(0)} x the floor; peak memory ${((peak - before) / 1e6).toFixed(0)} MB more`,
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
}

function writeWide(path: string): void {
  const file = openSync(path, 'w');
  const names = [
    'Elapsed (s)',
    'RPM',
    'Oil Temp (degC)',
    'Coolant Temp (degC)',
    'OAT (degC)',
    ...Array.from({ length: COLUMNS - 5 }, (_, i) => `Extra ${i} (V)`),
  ];
  writeSync(file, `${names.join(',')}\n`);
  let block = '';
  for (let i = 0; i < ROWS; i++) {
    const wave = Math.sin(i / 300);
    let row = `${i},${(2400 + 20 * wave).toFixed(0)},${(85 + wave).toFixed(1)},${(92 + 2 * wave).toFixed(1)},${(14.2 + 0.1 * wave).toFixed(1)}`;
    for (let c = 5; c < COLUMNS; c++) row += `,${((i * (c + 3)) % 1400) / 100}`;
    block += `${row}\n`;
    if (block.length > 1 << 20) {
      writeSync(file, block);
      block = '';
    }
  }
  writeSync(file, block);
}

function eachPiece(path: string, take: (piece: Uint8Array) => void): void {
  const file = openSync(path, 'r');
  const piece = Buffer.alloc(1 << 20);
  for (let n = readSync(file, piece); n > 0; n = readSync(file, piece)) take(piece.subarray(0, n));
}

function scanNewlines(path: string): void {
  let lines = 0;
  eachPiece(path, (piece) => {
    for (let at = piece.indexOf(10); at >= 0; at = piece.indexOf(10, at + 1)) lines++;
  });
  if (lines !== ROWS + 1) throw new Error(`${lines} lines`);
}

function lookAtBytes(path: string): void {
  let sum = 0;
  eachPiece(path, (piece) => {
    for (let i = 0; i < piece.length; i++) sum += piece[i] ?? 0;
  });
  if (sum === 0) throw new Error('nothing was read');
}

function parseWithPapa(path: string): void {
  let rows = 0;
  Papa.parse<string[]>(readFileSync(path, 'utf8'), {
    step: () => {
      rows++;
    },
  });
  if (rows < ROWS) throw new Error(`${rows} rows`);
}

async function best(run: () => unknown, times = 3): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    await run();
    least = Math.min(least, (performance.now() - start) / 1000);
  }
  return least;
}
