/** A browser for measuring pages: the one cards are printed with, scripts allowed, nothing fetched. */
import puppeteer, { type Browser, type Page } from 'puppeteer';
import { findBrowser } from '../../server/find-browser.mjs';

export async function openTestBrowser(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === null) throw new Error('the print tests need Chromium, Chrome or Edge; npm test installs one');
  return await puppeteer.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
}

/** A page with a document in it, fonts loaded. */
export async function pageWith(browser: Browser, html: string): Promise<Page> {
  const page = await browser.newPage();
  // the transpiler marks named functions with a helper the page does not have
  await page.evaluateOnNewDocument('globalThis.__name = (f) => f');
  // every sheet laid out, also those out of sight
  const allInSight = html.replace('</style>', '.sheet{content-visibility:visible}</style>');
  await page.setContent(allInSight, { waitUntil: 'load' });
  await page.evaluate('globalThis.__name = (f) => f');
  await page.evaluate(() => document.fonts.ready.then(() => true));
  return page;
}
