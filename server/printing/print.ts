/** HTML to PDF: tagged, with an outline from its headings, on the paper its style sheet names. */
import type { Page } from 'puppeteer';
import { openPrintingBrowser, type PrintingBrowser } from './browser.ts';
import { openPrintQueue, type PrintQueue } from './queue.ts';

/** A page that takes longer than this is stuck. */
const LIMIT_MS = 120_000;

export interface PrintRequest {
  signal?: AbortSignal;
  /** told what is going on, in words */
  onProgress?: (words: string) => void;
}

export interface Printer {
  /**
   * Print a document that needs nothing from outside.
   * @param html the document, text
   * @param request cancel and progress
   * @returns the PDF's bytes
   * @throws InputProblem without a browser, when it stopped twice, or when too many prints wait
   */
  printHtml(html: string, request?: PrintRequest): Promise<Uint8Array>;
  close(): Promise<void>;
}

/**
 * A printer: one browser, one queue.
 * @param parts a browser or queue of one's own, for tests
 */
export function openPrinter(parts: { browser?: PrintingBrowser; queue?: PrintQueue } = {}): Printer {
  const { browser = openPrintingBrowser(), queue = openPrintQueue() } = parts;
  return {
    printHtml: (html, { signal, onProgress } = {}) =>
      queue.run(
        () =>
          browser.withPage(async (page) => {
            onProgress?.('setting the pages');
            await setPages(page, html);
            onProgress?.('writing the PDF');
            return await page.pdf({
              preferCSSPageSize: true,
              printBackground: true,
              tagged: true,
              outline: true,
              timeout: LIMIT_MS,
            });
          }, signal),
        signal,
        (before) => onProgress?.(before === 0 ? 'next in line' : `waiting behind ${before}`),
      ),
    close: () => browser.close(),
  };
}

/**
 * Put a document into a page, its typefaces loaded: sheets out of sight have asked for none yet, and a page printed
 * before they are there would be set in another face, at other widths.
 * @param page a fresh page
 * @param html the document, text
 */
export async function setPages(page: Page, html: string): Promise<void> {
  await page.setContent(html, { waitUntil: 'load', timeout: LIMIT_MS });
  await page.evaluate('Promise.all([...document.fonts].map((face) => face.load())).then(() => true)');
}

let shared: Printer | undefined;

/** The service's one printer. */
export function printer(): Printer {
  shared ??= openPrinter();
  return shared;
}

/** Print with the service's one printer. */
export function printHtml(html: string, request?: PrintRequest): Promise<Uint8Array> {
  return printer().printHtml(html, request);
}
