/** The command with its output caught. */
import { PassThrough, Readable } from 'node:stream';
import { text } from 'node:stream/consumers';
import { run } from '../../../server/command/proveout.ts';

export interface Ran {
  code: number;
  out: string;
  err: string;
  /** stdout as JSON; throws when anything else stands there */
  json(): unknown;
}

export async function runCommand(argv: string[], input = ''): Promise<Ran> {
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const caught = Promise.all([text(stdout), text(stderr)]);
  try {
    const code = await run(argv, { stdout, stderr, stdin: Readable.from([input]) });
    stdout.end();
    stderr.end();
    const [out, err] = await caught;
    return { code, out, err, json: () => JSON.parse(out) };
  } catch (error) {
    stdout.destroy();
    stderr.destroy();
    throw error;
  }
}
