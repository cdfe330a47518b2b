/** Open the service's port. */
import { InputProblem, problem } from '../analysis/remarks/index.ts';
import type { App } from './app.ts';

/** Ports tried after the usual one when none was asked for. */
const FURTHER = 10;

/**
 * @param app the service
 * @param port the one asked for; the usual one or the next free after it when none was
 * @returns its address, such as http://127.0.0.1:4170
 * @throws InputProblem `port-in-use`
 */
export async function listen(app: App, port?: number): Promise<string> {
  const { host, port: usual } = app.desk.settings;
  const wanted = port === undefined ? Array.from({ length: FURTHER }, (_, i) => usual + i) : [port];
  for (const one of wanted) {
    if (await opened(app, host, one)) return addressOf(app, host);
  }
  throw new InputProblem([problem('port-in-use', `Port ${wanted.join(', ')} of ${host} is in use.`)]);
}

async function opened(app: App, host: string, port: number): Promise<boolean> {
  try {
    await app.http.listen({ host, port });
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE') return false;
    throw error;
  }
}

function addressOf(app: App, host: string): string {
  const bound = app.http.server.address();
  const port = bound !== null && typeof bound === 'object' ? bound.port : 0;
  return `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
}
