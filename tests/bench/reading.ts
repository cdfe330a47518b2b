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
import type { ReadOutcome } from '../../analysis/logs/index.ts';
import { readLogFile } from '../../server/reading/read-log-file.ts';
import { readLogInWorker } from '../../server/reading/read-log-in-worker.ts';
import { readingThreads } from '../../server/reading/reading-workers.ts';
import { WIDE_COLUMNS, writeWideLog } from './write-wide-log.ts';

const ROWS = Number(process.env.BENCH_ROWS ?? 1_500_000);
/** A log of some 20 MB: a long flight of a recorder with many channels. */
const SMALL_ROWS = 125_000;
/** The first rounds are those in which the engine still learns which code is worth its while. */
const ROUNDS = 10;

interface Figures {
  megabytes: number;
  newlineScan: number;
  everyByteIndexed: number;
  everyByteOf: number;
  papaparseTexts: number;
  papaparseColumns: number;
  /** as the service and the command read a large log: in as many threads as there are */
  ours: number;
  oursOneThread: number;
  /** the same, and then every column made numbers in SI */
  oursInFull: number;
  /** of the rate of the `for (i)` loop, in each round */
  shareByRound: number[];
  smallMegabytes: number;
  small: number;
  peakMegabytes: number;
  slowestAnswerMs: number;
}

/** Measures, prints ratios, and gives the figures. */
export async function benchReading(): Promise<Figures> {
  const folder = mkdtempSync(join(tmpdir(), 'reading-'));
  const path = join(folder, 'wide.csv');
  const smallPath = join(folder, 'small.csv');
  try {
    writeWideLog(path, ROWS);
    writeWideLog(smallPath, SMALL_ROWS);
    // First, while this process holds nothing yet and no thread has been started.
    const { peakMegabytes, slowestAnswerMs } = await meanwhile(path);
    // Round by round, so that what else the computer does meets all of them alike.
    const rounds = await timesOf([
      () => scanNewlines(path),
      () => eachPiece(path, sumIndexed),
      () => eachPiece(path, sumOf),
      () => readInThreads(path, ROWS),
      () => readHere(path, ROWS),
      async () => asNumbers(await readInThreads(path, ROWS)),
      () => readHere(smallPath, SMALL_ROWS),
    ]);
    const [newlineScan, everyByteIndexed, everyByteOf, ours, oursOneThread, oursInFull, small] = rounds.map((times) =>
      Math.min(...times),
    );
    const shareByRound = (rounds[1] ?? []).map((loop, round) => loop / (rounds[3]?.[round] ?? Number.NaN));
    const papaparseTexts = await timeOf(() => parseWithPapa(path, () => {}));
    const papaparseColumns = await timeOf(() => parseWithPapa(path, columnsOfNumbers()));
    const figures = {
      megabytes: statSync(path).size / 1e6,
      newlineScan: newlineScan ?? Number.NaN,
      everyByteIndexed: everyByteIndexed ?? Number.NaN,
      everyByteOf: everyByteOf ?? Number.NaN,
      papaparseTexts,
      papaparseColumns,
      ours: ours ?? Number.NaN,
      oursOneThread: oursOneThread ?? Number.NaN,
      oursInFull: oursInFull ?? Number.NaN,
      shareByRound,
      smallMegabytes: statSync(smallPath).size / 1e6,
      small: small ?? Number.NaN,
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
  const share = (seconds: number, of = f.ours) => `${((100 * seconds) / of).toFixed(0)} %`;
  const times = (seconds: number, of = f.ours) => (seconds / of).toFixed(1);
  return [
    `${f.megabytes.toFixed(0)} MB, ${ROWS} rows x ${WIDE_COLUMNS} columns; best of ${ROUNDS} rounds, papaparse of one; ${readingThreads()} threads`,
    `read and newline scan (floor)                  ${rate(f.newlineScan)}`,
    `every byte looked at, \`for (i)\` over the piece  ${rate(f.everyByteIndexed)}`,
    `every byte looked at, \`for (of)\` over the piece ${rate(f.everyByteOf)}`,
    `papaparse alone, cells left as texts           ${rate(f.papaparseTexts)}`,
    `papaparse alone, into columns of numbers       ${rate(f.papaparseColumns)}`,
    `ours, all checks and flags, ${readingThreads()} threads           ${rate(f.ours)}`,
    `ours, all checks and flags, one thread         ${rate(f.oursOneThread)}`,
    `ours, ${readingThreads()} threads, then every column made SI      ${rate(f.oursInFull)}`,
    `ours is ${times(f.papaparseTexts)} times papaparse alone (wanted 5) and ${times(f.papaparseColumns)} times papaparse that also fills columns;`,
    `with one thread ${times(f.papaparseTexts, f.oursOneThread)} and ${times(f.papaparseColumns, f.oursOneThread)} times`,
    `${share(f.everyByteIndexed)} of the rate of the \`for (i)\` loop (wanted 70 %), with one thread ${share(f.everyByteIndexed, f.oursOneThread)}; ${share(f.everyByteOf)} of the slower \`for (of)\` loop; ${times(f.ours, f.newlineScan)} times the time of the floor`,
    `round by round, where both meet the same computer: ${f.shareByRound.map((one) => (100 * one).toFixed(0)).join(', ')} %`,
    `numbers are kept as written and made SI a column at a time, when one is first asked for: ${((1000 * (f.oursInFull - f.ours)) / WIDE_COLUMNS).toFixed(1)} ms a column`,
    `a log of ${f.smallMegabytes.toFixed(0)} MB, ${SMALL_ROWS} rows, one thread: ${(1000 * f.small).toFixed(0)} ms`,
    `peak memory ${f.peakMegabytes.toFixed(0)} MB beyond the process before (wanted under 1000)`,
    `slowest answer of a service in the same process while threads read: ${f.slowestAnswerMs.toFixed(0)} ms (wanted under 100)`,
    '',
  ].join('\n');
}

const optionsFor = (path: string) => ({ file: 'wide.csv', sha256: '0'.repeat(64), sizeBytes: statSync(path).size });

async function readHere(path: string, rows: number): Promise<ReadOutcome> {
  return checked(await readLogFile(path, optionsFor(path)), rows);
}

async function readInThreads(path: string, rows: number): Promise<ReadOutcome> {
  return checked(await readLogInWorker(path, optionsFor(path)), rows);
}

function checked(outcome: ReadOutcome, rows: number): ReadOutcome {
  if (outcome.accepted !== 'yes' || outcome.rows !== rows) throw new Error(`${outcome.accepted}, ${outcome.rows} rows`);
  return outcome;
}

/** What a reader of all channels at once would ask for. */
function asNumbers({ table }: ReadOutcome): void {
  const sum = (table?.channels ?? []).reduce((total, { values }) => total + (values[values.length - 1] ?? 0), 0);
  if (!Number.isFinite(sum)) throw new Error('a number is missing');
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
  await readInThreads(path, ROWS);
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

/** Times of each, s, one a round. */
async function timesOf(runs: readonly (() => unknown)[]): Promise<number[][]> {
  const times = runs.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [i, run] of runs.entries()) times[i]?.push(await timeOf(run));
  }
  return times;
}

async function timeOf(run: () => unknown): Promise<number> {
  const start = performance.now();
  await run();
  return (performance.now() - start) / 1000;
}
