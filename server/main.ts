/** Start the service: desk, demo on the first run, app, port; stop it cleanly on a signal. */
import { resolve } from 'node:path';
import type { Writable } from 'node:stream';
import { parseArgs } from 'node:util';
import { InputProblem } from '../analysis/remarks/index.ts';
import { settingsOf } from './settings.ts';

export const SERVE_HELP = `proveout serve [--port N] [--data DIR] [--host H] [--json]

Opens the service on this computer (127.0.0.1) and prints its address. Ctrl-C stops it.

  --port N     port to use; without it 4170 or the next free one
  --data DIR   folder that holds the books; without it the folder "data" of this program
  --host H     address to listen on; anything but 127.0.0.1 lets others on the network reach it
`;

export interface Started {
  address: string;
  /** folder that holds them */
  books: string;
  /** what the person is told */
  says: string[];
  close(): Promise<void>;
}

/**
 * @param argv arguments after the verb
 * @param out where the address is printed
 * @returns exit code; 0 once the service was stopped
 */
export async function main(argv: string[], out: Writable = process.stdout, err: Writable = process.stderr) {
  const options = readOptions(argv);
  if (options === 'help' || options === 'wrong') {
    (options === 'help' ? out : err).write(SERVE_HELP);
    return options === 'help' ? 0 : 2;
  }
  try {
    const { address, books, says, close } = await start(options);
    const stopped = await onStopSignal(close);
    out.write(options.json ? `${JSON.stringify({ address, books })}\n` : `${says.join('\n')}\n`);
    await stopped.wait;
    return 0;
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    err.write(`proveout: ${error.message}\n`);
    return 1;
  }
}

export interface ServeOptions {
  port?: number;
  data?: string;
  host?: string;
  json?: boolean;
}

/** Start and go on; the caller stops it. */
export async function start({ port, data, host }: ServeOptions): Promise<Started> {
  const settings = settingsOf({
    ...(data === undefined ? {} : { dataFolder: resolve(data) }),
    ...(host === undefined ? {} : { host }),
  });
  const [{ openDesk }, { buildApp }, { listen }, { layOutDemo }, { isLoopback }] = await Promise.all([
    import('./desk.ts'),
    import('./app.ts'),
    import('./listen.ts'),
    import('./actions/lay-out-demo.ts'),
    import('./plugins/own-machine.ts'),
  ]);
  const desk = openDesk({ settings });
  try {
    const made = await layOutDemo(desk);
    const app = await buildApp(desk);
    const address = await listen(app, port);
    const says = [
      ...(made.length > 0 ? [`First run: the demo airplanes ${made.join(' and ')} are ready.`] : []),
      `Proveout is open at ${address}`,
      `Books are kept in ${settings.dataFolder}`,
      ...(isLoopback(settings.host) ? [] : ['Others on this network can reach it: there is no password.']),
    ];
    return { address, books: settings.dataFolder, says, close: app.close };
  } catch (error) {
    await desk.close();
    throw error;
  }
}

function readOptions(argv: string[]): ServeOptions | 'help' | 'wrong' {
  try {
    const { values } = parseArgs({
      args: argv,
      options: {
        port: { type: 'string' },
        data: { type: 'string' },
        host: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
        json: { type: 'boolean' },
      },
    });
    if (values.help) return 'help';
    const port = values.port === undefined ? undefined : Number(values.port);
    if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65_535)) return 'wrong';
    return {
      ...(port === undefined ? {} : { port }),
      ...(values.data === undefined ? {} : { data: values.data }),
      ...(values.host === undefined ? {} : { host: values.host }),
      ...(values.json ? { json: true } : {}),
    };
  } catch {
    return 'wrong';
  }
}

/** Close on Ctrl-C or a request to stop, a second one stops at once; the handler stands once this resolves. */
async function onStopSignal(close: () => Promise<void>): Promise<{ wait: Promise<void> }> {
  const { default: closeWithGrace } = await import('close-with-grace');
  const wait = new Promise<void>((resolve) => {
    closeWithGrace({ delay: 15_000 }, async ({ err }) => {
      if (err) process.stderr.write(`${err.stack ?? err.message}\n`);
      await close();
      resolve();
    });
  });
  return { wait };
}
