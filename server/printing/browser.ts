/**
 * The printing browser: found on this computer, started when first needed, kept while there is work, closed when idle.
 * Pages run no scripts and reach nothing: every request but data and about:blank is refused.
 */
import puppeteer, { type Browser, type HTTPRequest, type Page } from 'puppeteer';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { findBrowser } from '../find-browser.mjs';

/** An idle browser gives its memory back. */
const IDLE_MS = 60_000;

const FLAGS = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-quic',
  '--font-render-hinting=none',
];

export interface PrintingBrowser {
  /**
   * Work on a fresh page. A browser that dies under it is started again and the work done once more.
   * @throws InputProblem when there is no browser, or it stopped twice
   */
  withPage<T>(work: (page: Page) => Promise<T>, signal?: AbortSignal): Promise<T>;
  /** process id while one runs */
  processId(): number | null;
  close(): Promise<void>;
}

/**
 * A printing browser, not started yet.
 * @param world where the executable is, and how long an idle one is kept, ms
 */
export function openPrintingBrowser(world: { find?: () => string | null; idleMs?: number } = {}): PrintingBrowser {
  const { find = findBrowser, idleMs = IDLE_MS } = world;
  let starting: Promise<Browser> | null = null;
  let running: Browser | null = null;
  let idle: NodeJS.Timeout | undefined;
  let inWork = 0;

  const started = async (): Promise<Browser> => {
    if (running?.connected) return running;
    starting ??= launch(find).finally(() => {
      starting = null;
    });
    running = await starting;
    return running;
  };
  const close = async () => {
    clearTimeout(idle);
    const one = starting ? await starting.catch(() => null) : running;
    running = null;
    await one?.close().catch(() => undefined);
  };
  const rest = () => {
    if (inWork > 0) return;
    idle = setTimeout(() => void close(), idleMs);
    idle.unref();
  };

  return {
    withPage: async (work, signal) => {
      inWork += 1;
      clearTimeout(idle);
      try {
        return await onPage(await started(), work, signal);
      } catch (error) {
        signal?.throwIfAborted();
        if (!stopped(error, running)) throw error;
        return await onPage(await started(), work, signal).catch((again: unknown) => {
          signal?.throwIfAborted();
          throw stopped(again, running)
            ? new InputProblem([problem('print-failed', 'The printing browser stopped while it worked, twice.')])
            : again;
        });
      } finally {
        inWork -= 1;
        rest();
      }
    },
    processId: () => (running?.connected ? (running.process()?.pid ?? null) : null),
    close,
  };
}

async function launch(find: () => string | null): Promise<Browser> {
  const executablePath = find();
  if (executablePath === null) {
    throw new InputProblem([
      problem('no-browser', 'Printing needs Chrome, Chromium or Edge, and none was found here.'),
    ]);
  }
  const start = (args: string[]) =>
    // by a pipe, so that the browser ends with this process however it ends
    puppeteer.launch({
      executablePath,
      args,
      pipe: true,
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
    });
  // Chromium refuses to start as root with its sandbox; some containers have none to give.
  if (process.getuid?.() === 0) return await start([...FLAGS, '--no-sandbox']);
  try {
    return await start(FLAGS);
  } catch (error) {
    if (!String(error).includes('No usable sandbox')) throw error;
    process.stderr.write('The printing browser found no usable sandbox here and runs without one.\n');
    return await start([...FLAGS, '--no-sandbox']);
  }
}

async function onPage<T>(browser: Browser, work: (page: Page) => Promise<T>, signal?: AbortSignal): Promise<T> {
  signal?.throwIfAborted();
  const page = await browser.newPage();
  const stop = () => void page.close().catch(() => undefined);
  signal?.addEventListener('abort', stop, { once: true });
  try {
    await page.setJavaScriptEnabled(false);
    await page.setRequestInterception(true);
    page.on('request', answer);
    return await work(page);
  } finally {
    signal?.removeEventListener('abort', stop);
    await page.close().catch(() => undefined);
  }
}

function answer(request: HTTPRequest): void {
  const url = request.url();
  const inside = url.startsWith('data:') || url === 'about:blank';
  void (inside ? request.continue() : request.abort('blockedbyclient')).catch(() => undefined);
}

function stopped(error: unknown, browser: Browser | null): boolean {
  const name = error instanceof Error ? error.name : '';
  return name === 'TargetCloseError' || name === 'ConnectionClosedError' || browser?.connected !== true;
}
