/** The whole plan on paper: page n of m, fonts, tags, outline, sizes, nothing cut off. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planProgram } from '../../analysis/program/index.ts';
import { previewPlan, printPlan } from '../../server/actions/print-plan.ts';
import { openPrinter, type Printer } from '../../server/printing/print.ts';
import type { PlanPaper } from '../../templates/plan/plan-options.ts';
import { demoAirplane, longestAirplane } from './demo-cards.ts';
import { outlineOf } from './outline-of.ts';
import { openTestBrowser, pageWith } from './test-browser.ts';

/** width and height of a sheet, points */
const SIZES: Record<PlanPaper, [number, number]> = { letter: [612, 792], a4: [595, 842] };

let printer: Printer;
let folder: string;
beforeAll(() => {
  printer = openPrinter();
  folder = mkdtempSync(join(tmpdir(), 'plan-'));
});
afterAll(async () => {
  await printer.close();
  rmSync(folder, { recursive: true });
});

const inputOf = (airplane = demoAirplane('wrenlet')) => ({
  airplane,
  program: planProgram(airplane),
  revision: 7,
  printed: '4 May 2031',
});

const latin = (pdf: Uint8Array) => Buffer.from(pdf).toString('latin1');

/** A tool of the system; a machine without it says so instead of passing. */
function tool(name: string, pdf: Uint8Array, ...more: string[]): string | null {
  const file = join(folder, 'plan.pdf');
  writeFileSync(file, pdf);
  try {
    return execFileSync(name, [file, ...more], { encoding: 'utf8', maxBuffer: 1e8 });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

describe.each(['letter', 'a4'] as const)('on %s', (paper) => {
  test('each page says its number of all, the revision and the day', { timeout: 60_000 }, async () => {
    const { pdf, pages } = await printPlan(inputOf(), paper, {}, printer);
    const [width, height] = SIZES[paper];
    for (const [, w = '', h = ''] of latin(pdf).matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/g)) {
      expect(Math.abs(Number(w) - width)).toBeLessThan(1);
      expect(Math.abs(Number(h) - height)).toBeLessThan(1);
    }
    const text = tool('pdftotext', pdf, '-layout', '-');
    if (text === null) return;
    const sheets = text.split('\f').slice(0, -1);
    expect(sheets).toHaveLength(pages);
    for (const [i, sheet] of sheets.entries()) {
      expect(sheet).toContain(`page ${i + 1} of ${pages}`);
      expect(sheet).toContain('revision 7, printed 4 May 2031');
      expect(sheet).toContain('0X-WRN Wrenlet, flight-test plan (invented airplane)');
    }
  });
});

describe('the document', () => {
  test('is tagged, in English, with a title, an outline of its chapters, and only our fonts in it', async () => {
    const { pdf } = await printPlan(inputOf(), 'letter', {}, printer);
    const text = latin(pdf);
    expect(text).toMatch(/\/StructTreeRoot/);
    expect(text).toMatch(/\/Marked\s+true/);
    expect(text).toMatch(/\/Lang\s*\(en\)/);
    expect(text).toContain('0X-WRN Wrenlet: flight-test plan, revision 7');
    const outline = outlineOf(pdf);
    for (const chapter of ['1. The airplane', '10. The program, stage by stage', '14. Signatures']) {
      expect(outline).toContain(chapter);
    }
    const names = [...text.matchAll(/\/BaseFont\s*\/([^\s/]+)/g)].map(([, name = '']) => name.replace(/^[A-Z]+\+/, ''));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(name).toMatch(/^(B612|DejaVuSans)/);
    for (const line of (tool('pdffonts', pdf) ?? '').split('\n').slice(2).filter(Boolean)) {
      expect(line).toMatch(/yes yes yes/);
    }
  });

  test.each([
    ['Ouzel', demoAirplane('ouzel')],
    ['an airplane with everything, under the longest names', longestAirplane()],
  ])('of %s cuts nothing off and sets nothing under 9 pt', async (_, airplane) => {
    const browser = await openTestBrowser();
    try {
      const page = await pageWith(browser, await previewPlan(inputOf(airplane), 'a4'));
      // the width between the margins of A4, in CSS pixels
      await page.setViewport({ width: Math.floor(((210 - 22 - 16) * 96) / 25.4), height: 1000 });
      await page.emulateMediaType('print');
      const found = await page.evaluate(() => {
        const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
        const cells = [...document.querySelectorAll('td, th, dd, dt, li, p, h1, h2, h3, h4')];
        const cut = cells.filter((one) => one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0);
        const small = cells.filter((one) => Number.parseFloat(getComputedStyle(one).fontSize) < 12 - 0.01);
        return { wide, cut: cut.map((one) => one.textContent), small: small.map((one) => one.textContent) };
      });
      expect(found).toEqual({ wide: 0, cut: [], small: [] });
    } finally {
      await browser.close();
    }
  });

  test('is the same for the same input', async () => {
    expect(await previewPlan(inputOf(), 'a4')).toBe(await previewPlan(inputOf(), 'a4'));
  });
});
