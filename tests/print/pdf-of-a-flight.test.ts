/** A flight's cards as PDF: fonts, tags, outline, text, page sizes, and the same bytes for the same input. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PAPERS, type Paper, SHEETS } from '../../analysis/cards/index.ts';
import { previewCards, printCards } from '../../server/actions/print-cards.ts';
import { openPrinter, type Printer } from '../../server/printing/print.ts';
import { printOptionsSchema } from '../../templates/cards/options.ts';
import { demoAirplane } from './demo-cards.ts';
import { outlineOf } from './outline-of.ts';

const POINTS_PER_MM = 72 / 25.4;

let printer: Printer;
let folder: string;
beforeAll(() => {
  printer = openPrinter();
  folder = mkdtempSync(join(tmpdir(), 'cards-'));
});
afterAll(async () => {
  await printer.close();
  rmSync(folder, { recursive: true });
});

const flight = (paper: Paper, backs = false) => ({
  airplane: demoAirplane('ouzel'),
  revision: 7,
  selection: { kind: 'flight', number: 5 } as const,
  paper,
  options: printOptionsSchema.parse({ backs }),
  day: new Date('2031-05-04T12:00:00Z'),
});

const latin = (pdf: Uint8Array) => Buffer.from(pdf).toString('latin1');
const pagesIn = (pdf: Uint8Array) => latin(pdf).match(/\/Type\s*\/Page\b/g)?.length ?? 0;

/** A tool of the system; a machine without it says so instead of passing. */
function tool(name: string, pdf: Uint8Array, ...more: string[]): string | null {
  const file = join(folder, 'flight.pdf');
  writeFileSync(file, pdf);
  try {
    return execFileSync(name, [file, ...more], { encoding: 'utf8' });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

describe.each(PAPERS)('%s', (paper) => {
  test('page size and page count are those of the paper and the sheets', async () => {
    const { pdf, sheets, pages } = await printCards(flight(paper), {}, printer);
    const { width, height, perPage } = SHEETS[paper];
    expect(pages).toBe(Math.ceil(sheets / perPage));
    expect(pagesIn(pdf)).toBe(pages);
    const boxes = [...latin(pdf).matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/g)];
    expect(boxes).toHaveLength(pages);
    for (const [, w = '', h = ''] of boxes) {
      expect(Math.abs(Number(w) - width * perPage * POINTS_PER_MM)).toBeLessThan(1);
      expect(Math.abs(Number(h) - height * POINTS_PER_MM)).toBeLessThan(1);
    }
  });

  test('a back for notes behind every sheet doubles the pages', async () => {
    const { pdf, sheets } = await printCards(flight(paper, true), {}, printer);
    expect(pagesIn(pdf)).toBe(2 * Math.ceil(sheets / SHEETS[paper].perPage));
  });
});

describe('the document', () => {
  test('only our fonts are embedded', async () => {
    const { pdf } = await printCards(flight('half-letter'), {}, printer);
    const names = [...latin(pdf).matchAll(/\/BaseFont\s*\/([^\s/]+)/g)].map(([, name = '']) =>
      name.replace(/^[A-Z]+\+/, ''),
    );
    expect(names.length).toBeGreaterThan(0);
    // no letter of these cards is missing from it: the fallback face would be a sign that it was not loaded in time
    for (const name of names) expect(name).toMatch(/^B612/);
    const listed = tool('pdffonts', pdf);
    const lines = (listed ?? '').split('\n').slice(2).filter(Boolean);
    for (const line of lines) expect(line).toMatch(/^[A-Z]*\+?B612.*yes/);
  });

  test('it is tagged, in English, with a title', async () => {
    const { pdf } = await printCards(flight('a5'), {}, printer);
    const text = latin(pdf);
    expect(text).toMatch(/\/StructTreeRoot/);
    expect(text).toMatch(/\/Marked\s+true/);
    expect(text).toMatch(/\/Lang\s*\(en\)/);
    expect(text).toContain('0X-OZL Flight 5, rev 7');
  });

  test('its outline names the outing and each card, in order, also two-up', async () => {
    for (const paper of ['half-letter', 'letter-2up'] as const) {
      const { pdf, cards } = await printCards(flight(paper), {}, printer);
      const titles = outlineOf(pdf);
      const at = cards.map((card) => titles.findIndex((title) => title.includes(card.title)));
      expect(titles.some((title) => title.startsWith('Flight 5'))).toBe(true);
      expect(at.every((place) => place >= 0)).toBe(true);
      expect([...at].sort((a, b) => a - b)).toEqual(at);
    }
  });

  test('its text is text: the title, a stop number and a step are found', async () => {
    const { pdf, cards } = await printCards(flight('half-letter'), {}, printer);
    expect(latin(pdf)).toMatch(/\/ToUnicode/);
    const text = tool('pdftotext', pdf, '-');
    if (text === null) return expect(latin(pdf)).toMatch(/\/ActualText|\/ToUnicode/);
    expect(text).toContain(cards[0]?.title);
    expect(text.replace(/\s+/g, ' ')).toContain('coolant at 104 °C');
    expect(text.replace(/\s+/g, ' ')).toContain('No turn and no power change inside a leg');
  });

  test('the same input gives the same bytes apart from dates and identifiers', async () => {
    const bare = (pdf: Uint8Array) =>
      latin(pdf)
        .replace(/\/(CreationDate|ModDate)\s*\([^)]*\)/g, '')
        .replace(/\/ID\s*\[[^\]]*\]/g, '');
    const first = await printCards(flight('a5'), {}, printer);
    const second = await printCards(flight('a5'), {}, printer);
    expect(bare(second.pdf)).toBe(bare(first.pdf));
  });

  test('printed many times while the machine is busy, it is the same each time', async () => {
    const busy = setInterval(() => {
      const until = performance.now() + 15;
      while (performance.now() < until);
    }, 20);
    try {
      const lengths = new Set<number>();
      for (let i = 0; i < 12; i++) lengths.add((await printCards(flight('a5'), {}, printer)).pdf.length);
      expect(lengths.size).toBe(1);
    } finally {
      clearInterval(busy);
    }
  });

  test('the preview is the document that is printed', async () => {
    const one = await previewCards(flight('a5'));
    const two = await previewCards(flight('a5'));
    expect(two.html).toBe(one.html);
    expect(one.html).not.toMatch(/<script|https?:|src=/);
  });
});
