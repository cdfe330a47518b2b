/** The two ways in, as a person starts them: `npm start` opens, says where, and stops cleanly; the command prints JSON. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { text } from 'node:stream/consumers';
import { describe, expect, it, onTestFinished } from 'vitest';
import * as z from 'zod';
import { temporaryFolder } from './desk-for-tests.ts';

const bookList = z.object({
  books: z.array(z.object({ id: z.string(), demo: z.boolean(), problems: z.array(z.unknown()) })),
});

/** Start a script of the project; killed after the test if it still runs. */
function started(script: string, args: string[]): ChildProcess & { stdout: NonNullable<ChildProcess['stdout']> } {
  const child = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  return child;
}

async function addressOf(child: ReturnType<typeof started>): Promise<string> {
  let said = '';
  for await (const chunk of child.stdout) {
    said += String(chunk);
    const address = /open at (http:\S+)/.exec(said)?.[1];
    if (address) return address;
  }
  throw new Error(`no address in: ${said}`);
}

describe('npm start', () => {
  it('lays out the demo on the first run only, listens on this machine, and stops on a signal', async () => {
    const data = temporaryFolder();
    for (const signal of ['SIGTERM', 'SIGINT'] as const) {
      const child = started('server/start.mjs', ['--port', '0', '--data', data]);
      const address = await addressOf(child);
      expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
      const { books } = bookList.parse(await (await fetch(`${address}/api/books`)).json());
      expect(books.map((one) => one.id)).toEqual(['ouzel', 'wrenlet']);
      expect(books.every((one) => one.demo && one.problems.length === 0)).toBe(true);
      child.kill(signal);
      expect(await once(child, 'close')).toEqual([0, null]);
    }
  });

  it('tells a second service on the same data that the books are in use', async () => {
    const data = temporaryFolder();
    const first = started('server/start.mjs', ['--port', '0', '--data', data]);
    await addressOf(first);
    const second = started('server/start.mjs', ['--port', '0', '--data', data]);
    const address = await addressOf(second);
    const { books } = bookList.parse(await (await fetch(`${address}/api/books`)).json());
    expect(books[0]?.problems).toMatchObject([{ code: 'book-in-use' }]);
  });
});

describe('the command', () => {
  it('gives the same from joined modules and from each file by itself', async () => {
    const outputs: string[] = [];
    for (const how of ['joined', 'each']) {
      const env = { ...process.env, PROVEOUT_LOAD: how };
      const argv = ['server/cli.mjs', 'program', 'sample-tests/ouzel/airplane.json', '--json'];
      const child = spawn(process.execPath, argv, { stdio: ['ignore', 'pipe', 'inherit'], env });
      outputs.push(await text(child.stdout));
    }
    expect(outputs[0]?.length).toBeGreaterThan(1000);
    expect(outputs[0]).toBe(outputs[1]);
  });

  it('opens the service too, and says where as JSON', async () => {
    const data = temporaryFolder();
    const child = started('server/cli.mjs', ['serve', '--port', '0', '--data', data, '--json']);
    let said = '';
    for await (const chunk of child.stdout) {
      said += String(chunk);
      if (said.endsWith('\n')) break;
    }
    const { address } = z.object({ address: z.url(), books: z.literal(data) }).parse(JSON.parse(said));
    expect((await fetch(`${address}/api/health`)).status).toBe(200);
    child.kill('SIGTERM');
    expect(await once(child, 'exit')).toEqual([0, null]);
  });

  it('prints JSON and nothing else, with its exit code', async () => {
    const good = started('server/cli.mjs', ['program', 'sample-tests/wrenlet/airplane.json', '--json']);
    const [out, [code]] = await Promise.all([text(good.stdout), once(good, 'close')]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ airplane: { name: 'Wrenlet' } });
    const wrong = started('server/cli.mjs', ['program', 'no-such-file.json', '--json']);
    const [problems, [failed]] = await Promise.all([text(wrong.stdout), once(wrong, 'close')]);
    expect([failed, JSON.parse(problems)]).toMatchObject([1, { problems: [{ code: 'unreadable-file' }] }]);
  });
});
