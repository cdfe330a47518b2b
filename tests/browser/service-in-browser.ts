/** The whole service on a port of its own with the demo books, and a real browser that looks at its pages. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, { type Browser, type Page } from 'puppeteer';
import { findBrowser } from '../../server/find-browser.mjs';
import { start } from '../../server/main.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface LookedAt {
  page: Page;
  status: number;
  /** what the page's console, its scripts or its policy complained about */
  complaints: string[];
  /** requests that left for another host */
  outside: string[];
}

export interface ServiceInBrowser {
  address: string;
  open(path: string, more?: { width?: number; script?: boolean; dark?: boolean }): Promise<LookedAt>;
  /** ask the API as a page would */
  ask<T>(method: string, path: string, body?: unknown): Promise<T>;
  close(): Promise<void>;
}

export async function serviceInBrowser(): Promise<ServiceInBrowser> {
  const data = mkdtempSync(join(tmpdir(), 'proveout-browser-'));
  const service = await start({ port: 0, data });
  const address = service.address.replace(/\/$/, '');
  const browser = await launch();
  return {
    address,
    open: (path, more) => open(browser, address, path, more),
    ask: async <T>(method: string, path: string, body?: unknown) => {
      const answer = await fetch(`${address}${path}`, {
        method,
        ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
      });
      return (await answer.json()) as T;
    },
    close: async () => {
      await browser.close();
      await service.close();
      rmSync(data, { recursive: true, force: true });
    },
  };
}

async function launch(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === null) throw new Error('no browser found: the set-up script says how to get one');
  return puppeteer.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
}

async function open(
  browser: Browser,
  address: string,
  path: string,
  { width = 1280, script = true, dark = false }: { width?: number; script?: boolean; dark?: boolean } = {},
): Promise<LookedAt> {
  const page = await browser.newPage();
  const complaints: string[] = [];
  const outside: string[] = [];
  page.on('pageerror', (error) => complaints.push(error instanceof Error ? error.message : String(error)));
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type())) complaints.push(message.text());
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(data|blob|about):/.test(url)) outside.push(url);
  });
  await page.setJavaScriptEnabled(script);
  await page.setViewport({ width, height: 900 });
  if (dark) await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: 'dark' }]);
  const answer = await page.goto(`${address}${path}`, { waitUntil: 'load' });
  await page.waitForNetworkIdle({ idleTime: 100 });
  return { page, status: answer?.status() ?? 0, complaints, outside };
}

/** What axe finds serious or worse on a page, one line each. */
export async function seriousFindings(page: Page): Promise<string[]> {
  // evaluated by the test, past the page's own policy, which lets no foreign script in
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run(
          options: object,
        ): Promise<{ violations: { id: string; impact: string; nodes: { html: string; failureSummary: string }[] }[] }>;
      };
    };
    const { violations } = await axe.run({ resultTypes: ['violations'], iframes: false });
    return violations
      .filter((one) => one.impact === 'serious' || one.impact === 'critical')
      .flatMap((one) =>
        one.nodes
          .slice(0, 3)
          .map((node) => `${one.id}: ${node.html.slice(0, 160)} ${node.failureSummary.slice(0, 200)}`),
      );
  });
}

/** Log names to ids of a book. */
export async function logIds(service: ServiceInBrowser, book: string): Promise<Map<string, string>> {
  const { logs } = await service.ask<{ logs: { id: string; name: string }[] }>('GET', `/api/books/${book}`);
  return new Map(logs.map((log) => [log.name, log.id]));
}
