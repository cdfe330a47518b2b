/** What each verb of the command is made of, and how it says what went wrong. */
import type { Readable, Writable } from 'node:stream';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import type { Problem } from '../../analysis/remarks/index.ts';

export interface Io {
  stdout: Writable;
  stderr: Writable;
  stdin: Readable;
}

export interface Verb {
  /** the whole help text; its first line is the usage */
  help: string;
  /** @returns exit code: 0 done, 1 the input cannot be used, 2 wrong usage, 3 a question must be answered first */
  run(argv: string[], io: Io): Promise<number>;
}

/** Arguments that make no sense; the help follows it. */
export class WrongUsage extends Error {}

type Options = NonNullable<ParseArgsConfig['options']>;

/**
 * Arguments by the rules of a verb.
 * @throws WrongUsage
 */
export function readArguments<O extends Options>(argv: string[], options: O) {
  try {
    return parseArgs({ args: argv, options: { ...options, json: { type: 'boolean' } }, allowPositionals: true });
  } catch (error) {
    throw new WrongUsage(error instanceof Error ? error.message : String(error), { cause: error });
  }
}

/** Print JSON as the only thing on stdout. */
export function printJson(io: Io, value: unknown): void {
  io.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

/** Print lines of text. */
export function printLines(io: Io, lines: readonly string[]): void {
  io.stdout.write(`${lines.join('\n')}\n`);
}

/** Complain about each problem: what, and how to mend it. */
export function complainAll(io: Io, problems: readonly Problem[]): void {
  for (const { message, mend } of problems) complain(io, `${/[.!?]$/.test(message) ? message : `${message}.`} ${mend}`);
}

/** Print a complaint. */
export function complain(io: Io, text: string): void {
  io.stderr.write(`proveout: ${text}\n`);
}
