/** `npm run pictures`: the README's pictures, taken from the running service with the demo airplanes, 1280 px wide. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import puppeteer from 'puppeteer';
import { findBrowser } from '../server/find-browser.mjs';

const OUT = join(import.meta.dirname, '..', 'sample-tests', 'pictures');
const PORT = 4761;
const BASE = `http://127.0.0.1:${PORT}`;

const data = mkdtempSync(join(tmpdir(), 'pictures-'));
mkdirSync(OUT, { recursive: true });
const { main } = await import('../server/main.ts');
// It answers until the process ends.
void main(['--port', String(PORT), '--data', data]);
for (let tries = 0; ; tries++) {
  const up = await fetch(`${BASE}/api/health`).then(
    (got) => got.ok,
    () => false,
  );
  if (up) break;
  if (tries > 100) throw new Error('the service did not start');
  await new Promise((resolve) => setTimeout(resolve, 100));
}

const executablePath = findBrowser();
if (!executablePath) throw new Error('no browser was found');
const browser = await puppeteer.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
const page = await browser.newPage();
await page.setViewport({ width: 1280, height: 900 });

async function take(name: string, path: string): Promise<void> {
  await page.goto(`${BASE}${path}`, { waitUntil: 'networkidle0' });
  await page.screenshot({ path: join(OUT, `${name}.png`) });
  process.stdout.write(`${name}.png from ${path}\n`);
}

async function answer(path: string, body?: unknown): Promise<unknown> {
  const init =
    body === undefined
      ? {}
      : { method: 'POST', headers: { 'content-type': 'application/json', origin: BASE }, body: JSON.stringify(body) };
  const got = await fetch(`${BASE}${path}`, init);
  if (!got.ok) throw new Error(`${path}: ${got.status} ${await got.text()}`);
  return got.json();
}

const book = (await answer('/api/books/ouzel')) as { logs: { id: string; name: string }[] };
const logId = book.logs.find((one) => one.name === 'ground-run-2.csv')?.id;
if (!logId) throw new Error('the demo book lacks ground-run-2.csv');
const reduced = (await answer('/api/books/ouzel/results', { kind: 'cooling-ground', logs: [logId] })) as {
  stored: { number: number };
};
const resultId = reduced.stored.number;

await take('home', '/books/ouzel');
await take('airplane', '/books/ouzel/airplane');
await take('program', '/books/ouzel/program');
await take('card', '/books/ouzel/cards?test=ground-cooling-fan-hold');
await take('log', `/books/ouzel/logs/${logId}`);
await take('result', `/books/ouzel/results/${resultId}`);
await browser.close();
rmSync(data, { recursive: true, force: true });
process.exit(0);
