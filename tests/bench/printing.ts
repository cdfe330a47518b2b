/** Printing: 60 sheets of cards against 60 blank pages and one warm layout of the same text; memory over 50 prints. */
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import { type Card, fillCard, SHEETS, sheetsOf } from '../../analysis/cards/index.ts';
import { applicable, CATALOGUE } from '../../analysis/catalogue/index.ts';
import { openPrintingBrowser } from '../../server/printing/browser.ts';
import { setPages } from '../../server/printing/print.ts';
import { cardsHtml } from '../../templates/cards/cards.view.ts';

const PAPER = 'half-letter';
const SHEET_COUNT = 60;
const ROUNDS = 11;
const PRINTS = 50;

export interface PrintingFigures {
  sheets: number;
  cardsMs: number;
  blankMs: number;
  layoutMs: number;
  /** cards against blank pages plus one layout */
  ratio: number;
  /** proportional memory of the browser before and after the prints, MB */
  memoryBefore: number | null;
  memoryAfter: number | null;
}

/**
 * Measure and print the figures.
 * @returns the figures, for whoever compares them
 */
export async function benchPrinting(): Promise<PrintingFigures> {
  const browser = openPrintingBrowser();
  try {
    const { html, sheets } = sixtySheets();
    const blank = blankPages(sheets);
    const print = (document: string) =>
      browser.withPage(async (page) => {
        await setPages(page, document);
        return await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
      });
    // every sheet laid out, also those out of sight
    const allInSight = html.replace('</style>', '.sheet{content-visibility:visible}</style>');
    const layout = () =>
      browser.withPage(async (page) => {
        await setPages(page, allInSight);
        return await page.evaluate('document.body.getBoundingClientRect().height');
      });
    await print(html);
    // in turns, so that what else the machine does falls on all alike
    const times = { cards: [] as number[], blank: [] as number[], layout: [] as number[] };
    for (let round = 0; round < ROUNDS; round++) {
      times.cards.push(await timeOf(() => print(html)));
      times.blank.push(await timeOf(() => print(blank)));
      times.layout.push(await timeOf(layout));
    }
    const [cardsMs, blankMs, layoutMs] = [median(times.cards), median(times.blank), median(times.layout)];
    const ratio = cardsMs / (blankMs + layoutMs);

    const memoryBefore = browserMemory(browser.processId());
    for (let i = 0; i < PRINTS; i++) await print(html);
    const memoryAfter = browserMemory(browser.processId());
    const figures = { sheets, cardsMs, blankMs, layoutMs, ratio, memoryBefore, memoryAfter };
    process.stdout.write(`${wordsOf(figures)}\n`);
    return figures;
  } finally {
    await browser.close();
  }
}

function wordsOf(figures: PrintingFigures): string {
  const ms = (value: number) => `${value.toFixed(0)} ms`;
  const mb = (value: number | null) => (value === null ? 'not known on this system' : `${value.toFixed(0)} MB`);
  return [
    `${figures.sheets} sheets of cards to PDF     ${ms(figures.cardsMs)}`,
    `${figures.sheets} blank pages to PDF         ${ms(figures.blankMs)}`,
    `one warm layout of the same text ${ms(figures.layoutMs)}`,
    `ratio                            ${figures.ratio.toFixed(2)}`,
    `browser memory, before ${PRINTS} prints  ${mb(figures.memoryBefore)}`,
    `browser memory, after           ${mb(figures.memoryAfter)}`,
  ].join('\n');
}

function sixtySheets(): { html: string; sheets: number } {
  const airplane = ouzel();
  const tests = CATALOGUE.filter((test) => test.flightMinutes > 0 && applicable(test, airplane).applies);
  const cards: Card[] = [];
  let sheets = 0;
  for (const test of tests) {
    const card = fillCard({
      test,
      airplane,
      place: { outing: 'Flight 1', place: 'Flight 1', revision: 'rev 1', printed: '4 May 2031' },
    });
    const more = sheetsOf(card, PAPER, 'normal').length;
    if (sheets + more > SHEET_COUNT) continue;
    cards.push(card);
    sheets += more;
  }
  return { html: cardsHtml(cards, PAPER), sheets };
}

function blankPages(count: number): string {
  const { width, height } = SHEETS[PAPER];
  const style = `@page{size:${width}mm ${height}mm;margin:0}body{margin:0}div{height:${height}mm;break-after:page}`;
  const pages = '<div></div>'.repeat(count);
  return `<!doctype html><html lang="en"><head><title>blank</title><style>${style}</style></head><body>${pages}</body></html>`;
}

function ouzel(): Airplane {
  const { airplane } = readAirplane(JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8')));
  if (!airplane) throw new Error('the demo airplane does not fit its schema');
  return airplane;
}

async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

function median(times: number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

/** Proportional memory of a process and its children, where the system tells it. */
function browserMemory(root: number | null): number | null {
  if (root === null || process.platform !== 'linux') return null;
  let kilobytes = 0;
  for (const id of familyOf(root)) {
    try {
      const found = /^Pss:\s+(\d+)/m.exec(readFileSync(`/proc/${id}/smaps_rollup`, 'utf8'))?.[1];
      kilobytes += Number(found ?? 0);
    } catch {
      // a child that ended meanwhile
    }
  }
  return kilobytes / 1024;
}

function familyOf(root: number): number[] {
  try {
    const children = readFileSync(`/proc/${root}/task/${root}/children`, 'utf8').trim().split(/\s+/).filter(Boolean);
    return [root, ...children.flatMap((child) => familyOf(Number(child)))];
  } catch {
    return [root];
  }
}
