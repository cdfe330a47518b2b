/**
 * Answer only requests that were meant for this service. A web page elsewhere can make a browser ask 127.0.0.1, or
 * point its own name at it (DNS rebinding): then the Host is not ours, or the Origin is another.
 */
import { isIP } from 'node:net';
import { hostname } from 'node:os';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';

const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]']);
const READS = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * @param app the service
 * @param boundTo the address it listens on
 */
export function ownMachine(app: FastifyInstance, boundTo: string): void {
  const open = !isLoopback(boundTo);
  app.addHook('onRequest', async (request) => {
    const why = whyRefused(request, open);
    if (why) throw new InputProblem([problem('refused-origin', why)]);
  });
}

/** Whether an address can only be reached from this machine. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(\.\d{1,3}){3}$/.test(host);
}

function whyRefused({ headers, method }: FastifyRequest, open: boolean): string | undefined {
  const host = headers.host ?? '';
  if (!isOurHost(nameOf(host), open)) return 'The request names another host.';
  const { origin } = headers;
  if (origin !== undefined && origin !== `http://${host}`) return 'The request comes from another page.';
  const site = headers['sec-fetch-site'];
  if (!READS.has(method) && site !== undefined && site !== 'same-origin' && site !== 'none') {
    return 'The request comes from another page.';
  }
  return undefined;
}

/** A name on the outside can be pointed at us; an address in figures and this machine's own name cannot. */
function isOurHost(name: string, open: boolean): boolean {
  if (LOOPBACK.has(name)) return true;
  return open && (isIP(name.replace(/^\[|\]$/g, '')) !== 0 || name === hostname().toLowerCase());
}

function nameOf(host: string): string {
  return host.toLowerCase().replace(/:\d*$/, '');
}
