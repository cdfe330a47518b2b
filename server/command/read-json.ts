/** JSON from a file or from standard input, with a problem that says which file and why. */
import { readFile } from 'node:fs/promises';
import { text } from 'node:stream/consumers';
import { type CodeOf, InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Io } from './verb.ts';

/**
 * @param path a file, or `-`
 * @param code problem of a file that is not JSON
 * @throws InputProblem
 */
export async function readJson(path: string, code: CodeOf<'problem'>, io: Io): Promise<unknown> {
  const content = path === '-' ? await text(io.stdin) : await readText(path);
  try {
    return JSON.parse(content.replace(/^\uFEFF/, ''));
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    throw new InputProblem([problem(code, `${path}: this is not JSON: ${words}.`, { file: path })]);
  }
}

async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    throw unreadable(path, error);
  }
}

/** A file that could not be opened, in words. */
export function unreadable(path: string, error: unknown): InputProblem {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const why = { ENOENT: 'there is no such file', EACCES: 'it may not be read', EISDIR: 'it is a folder' }[code];
  return new InputProblem([problem('unreadable-file', `${path}: ${why ?? 'it could not be opened'}.`, { file: path })]);
}
