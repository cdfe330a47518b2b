/** Logs named on the command line, read as the service reads them. */
import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { LogMap, ReadOutcome } from '../../analysis/logs/index.ts';
import { shownName } from '../../analysis/logs/shown-name.ts';
import { named } from '../actions/read-cached.ts';
import { unusedName } from '../actions/unused-name.ts';
import { hashOfFile } from '../book/raw-logs.ts';
import { readerFor } from '../log-reader.ts';
import { settingsOf } from '../settings.ts';
import { unreadable } from './read-json.ts';
import { type Io, WrongUsage } from './verb.ts';

/**
 * @param paths files in order; one of them may be `-`
 * @param map what their columns are, for all of them
 * @param sampleRateHz for files that carry no time
 * @throws InputProblem when one cannot be opened
 */
export async function readLogFiles(
  paths: readonly string[],
  io: Io,
  map?: LogMap,
  sampleRateHz?: number,
): Promise<ReadOutcome[]> {
  if (paths.filter((path) => path === '-').length > 1) throw new WrongUsage('"-" can stand for one file only.');
  const outcomes: ReadOutcome[] = [];
  const names = new Set<string>();
  for (const path of paths) {
    const given = path === '-' ? 'standard input' : basename(path);
    const name = unusedName(shownName(given).name, names);
    names.add(name);
    const more = { ...(map ? { map } : {}), ...(sampleRateHz === undefined ? {} : { sampleRateHz }) };
    const outcome = await (path === '-' ? readInput(given, io, more) : readFile(path, given, more));
    outcomes.push(named(outcome, name));
  }
  return outcomes;
}

async function readFile(path: string, file: string, more: { map?: LogMap; sampleRateHz?: number }) {
  const about = await stat(path).catch((error: unknown) => {
    throw unreadable(path, error);
  });
  if (about.isDirectory()) throw unreadable(path, Object.assign(new Error(), { code: 'EISDIR' }));
  const sha256 = (await hashOfFile(path)) ?? '';
  return readerFor(settingsOf())(path, { file, sha256, sizeBytes: about.size, ...more });
}

/** Standard input has no size and cannot be read twice: it goes through a file. */
async function readInput(file: string, io: Io, more: { map?: LogMap; sampleRateHz?: number }): Promise<ReadOutcome> {
  const path = join(tmpdir(), `proveout-${randomBytes(8).toString('hex')}`);
  try {
    await pipeline(io.stdin, createWriteStream(path, { flags: 'wx' }));
    return await readFile(path, file, more);
  } finally {
    await rm(path, { force: true });
  }
}
