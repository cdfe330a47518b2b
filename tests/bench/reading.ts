/**
 * Reading a log of 1.5 million rows: ours, with all checks on, beside floors and beside papaparse alone, in one run on
 * one file. `BENCH_ROWS` sets fewer rows. Runs alone as well: `node server/run.mjs tests/bench/bench.ts reading`.
 */
import { closeSync, createReadStream, mkdtempSync, openSync, readSync, rmSync, statSync } from 'node:fs';
import { createServer, get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import Papa from 'papaparse';
import { readLogFile } from '../../server/reading/read-log-file.ts';
import { readLogInWorker } from '../../server/reading/read-log-in-worker.ts';
import { WIDE_COLUMNS, writeWideLog } from './write-wide-log.ts';

const ROWS = Number(process.env.BENCH_ROWS ?? 1_500_000);

interface Figures {
  megabytes: number;
  newlineScan: number;
  everyByteIndexed: number;
  everyByteOf: number;
  papaparseTexts: number;
  papaparseColumns: number;
  ours: number;
  peakMegabytes: number;
  slowestAnswerMs: number;
}

/** Measures, prints ratios, and gives the figures. */
export async function benchReading(): Promise<Figures> {
  const folder = mkdtempSync(join(tmpdir(), 'reading-'));
  const path = join(folder, 'wide.csv');
  try {
    writeWideLog(path, ROWS);
    const megabytes = statSync(path).size / 1e6;
    const newlineScan = await best(() => scanNewlines(path));
    const everyByteIndexed = await best(() => eachPiece(path, sumIndexed));
    const everyByteOf = await best(() => eachPiece(path, sumOf));
    const ours = await best(() => readOurs(path));
    const papaparseTexts = await best(() => parseWithPapa(path, () => {}), 1);
    const papaparseColumns = await best(() => parseWithPapa(path, columnsOfNumbers()), 1);
    const { peakMegabytes, slowestAnswerMs } = await meanwhile(path);
    const figures = {
      megabytes,
      newlineScan,
      everyByteIndexed,
      everyByteOf,
      papaparseTexts,
      papaparseColumns,
      ours,
      peakMegabytes,
      slowestAnswerMs,
    };
    process.stdout.write(words(figures));
    return figures;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function words(f: Figures): string {
  const rate = (seconds: number) => `${seconds.toFixed(2)} s, ${(f.megabytes / seconds).toFixed(0)} MB/s`;
  const share = (seconds: number) => `${((100 * seconds) / f.ours).toFixed(0)} %`;
  return [
    `${f.megabytes.toFixed(0)} MB, ${ROWS} rows x ${WIDE_COLUMNS} columns; best of three, papaparse of one`,
    `read and newline scan (floor)                  ${rate(f.newlineScan)}`,
    `every byte looked at, \`for (i)\` over the piece  ${rate(f.everyByteIndexed)}`,
    `every byte looked at, \`for (of)\` over the piece ${rate(f.everyByteOf)}`,
    `papaparse alone, cells left as texts           ${rate(f.papaparseTexts)}`,
    `papaparse alone, into columns of numbers       ${rate(f.papaparseColumns)}`,
    `ours, into columns, all checks and flags       ${rate(f.ours)}`,
    `ours is ${(f.papaparseTexts / f.ours).toFixed(1)} times papaparse alone (wanted 5) and ${(f.papaparseColumns / f.ours).toFixed(1)} times papaparse that also fills columns, as ours does;`,
    `${share(f.everyByteIndexed)} of the rate of the \`for (i)\` loop (wanted 70 %), ${share(f.everyByteOf)} of the slower \`for (of)\` loop, ${(f.ours / f.newlineScan).toFixed(0)} times the time of the floor`,
    `peak memory ${f.peakMegabytes.toFixed(0)} MB beyond the process before (wanted under 1000)`,
    `slowest answer of a service in the same process while a worker reads: ${f.slowestAnswerMs.toFixed(0)} ms (wanted under 100)`,
    '',
  ].join('\n');
}

async function readOurs(path: string): Promise<void> {
  const outcome = await readLogFile(path, { file: 'wide.csv', sha256: '0'.repeat(64), sizeBytes: statSync(path).size });
  if (outcome.accepted !== 'yes' || outcome.rows !== ROWS) throw new Error(`${outcome.accepted}, ${outcome.rows} rows`);
}

/** While a worker reads, pages are asked for every 20 ms, and the memory of the process is watched. */
async function meanwhile(path: string): Promise<{ peakMegabytes: number; slowestAnswerMs: number }> {
  const server = createServer((_, response) => response.end('here'));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  globalThis.gc?.();
  const before = process.memoryUsage().rss;
  let peak = before;
  let slowest = 0;
  let going = true;
  const asking = (async () => {
    while (going) {
      const start = performance.now();
      await new Promise<void>((done, failed) => {
        get({ host: '127.0.0.1', port }, (answer) => answer.resume().on('end', done)).on('error', failed);
      });
      slowest = Math.max(slowest, performance.now() - start);
      peak = Math.max(peak, process.memoryUsage().rss);
      await new Promise((later) => setTimeout(later, 20));
    }
  })();
  await readLogInWorker(path, { file: 'wide.csv', sha256: '0'.repeat(64), sizeBytes: statSync(path).size });
  going = false;
  await asking;
  server.close();
  return { peakMegabytes: (peak - before) / 1e6, slowestAnswerMs: slowest };
}

function eachPiece(path: string, take: (piece: Uint8Array) => number): void {
  const file = openSync(path, 'r');
  const piece = Buffer.alloc(1 << 20);
  let sum = 0;
  for (let n = readSync(file, piece); n > 0; n = readSync(file, piece)) sum += take(piece.subarray(0, n));
  closeSync(file);
  if (sum === 0) throw new Error('nothing was read');
}

function scanNewlines(path: string): void {
  let lines = 0;
  eachPiece(path, (piece) => {
    for (let at = piece.indexOf(10); at >= 0; at = piece.indexOf(10, at + 1)) lines += 1;
    return lines;
  });
  if (lines !== ROWS + 1) throw new Error(`${lines} lines`);
}

function sumIndexed(piece: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < piece.length; i += 1) sum += piece[i] ?? 0;
  return sum;
}

function sumOf(piece: Uint8Array): number {
  let sum = 0;
  for (const byte of piece) sum += byte;
  return sum;
}

/** The way papaparse is used for large files: a stream of pieces, rows as lists of texts. */
function parseWithPapa(path: string, take: (rows: string[][]) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    let rows = 0;
    Papa.parse<string[]>(createReadStream(path, { encoding: 'utf8', highWaterMark: 1 << 20 }), {
      delimiter: ',',
      chunk: ({ data }) => {
        rows += data.length;
        take(data);
      },
      complete: () => (rows >= ROWS ? resolve() : reject(new Error(`${rows} rows`))),
      error: reject,
    });
  });
}

/** What the texts are for: numbers by column. The two of the clock stay as they are. */
function columnsOfNumbers(): (rows: string[][]) => void {
  const columns = Array.from({ length: WIDE_COLUMNS - 2 }, () => new Float64Array(ROWS + 1));
  let row = 0;
  return (rows) => {
    for (const cells of rows) {
      columns.forEach((values, c) => {
        values[row] = Number(cells[c + 2]);
      });
      row += 1;
    }
  };
}

async function best(run: () => unknown, times = 3): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i += 1) {
    const start = performance.now();
    await run();
    least = Math.min(least, (performance.now() - start) / 1000);
  }
  return least;
}
