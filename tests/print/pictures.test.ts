/**
 * Three cards, kept as data, drawn and compared with stored pictures: a change of the catalogue's words does not touch
 * them, a change of templates, style or dealing does. A changed picture is left in tests/.out/pictures; cards and
 * pictures are replaced on purpose only: UPDATE_PICTURES=1 npx vitest run tests/print/pictures.test.ts
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'puppeteer';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Card, cardSchema, type Paper } from '../../analysis/cards/index.ts';
import { testOf } from '../../analysis/catalogue/index.ts';
import { cardsHtml } from '../../templates/cards/cards.view.ts';
import { type PrintOptions, printOptionsSchema } from '../../templates/cards/options.ts';
import { cardFor, demoAirplane } from './demo-cards.ts';
import { openTestBrowser, pageWith } from './test-browser.ts';

const STORED = join(import.meta.dirname, 'pictures');
const CHANGED = join(import.meta.dirname, '..', '.out', 'pictures');

/**
 * Share of points that may differ by more than half of black to white: letter edges drawn by another browser version.
 * A moved line of text or a lost frame is five times that or more.
 */
const TOLERANCE = 0.006;

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openTestBrowser();
  page = await pageWith(browser, '<!doctype html><title>compare</title>');
});
afterAll(() => browser.close());

const CASES: [
  name: string,
  card: string,
  airplane: 'ouzel' | 'wrenlet',
  paper: Paper,
  options: Partial<PrintOptions>,
][] = [
  ['ground-cooling-fan-hold', 'ground-cooling-fan-hold', 'ouzel', 'half-letter', {}],
  ['airspeed-calibration-first', 'airspeed-calibration-first', 'ouzel', 'a4-2up', { hand: 'left' }],
  ['first-flight', 'first-flight', 'wrenlet', 'a5', { type: 'large', night: true }],
];

test.each(CASES)('%s', async (name, id, airplane, paper, options) => {
  const html = cardsHtml([storedCard(name, id, airplane)], paper, printOptionsSchema.parse(options));
  const now = await picture(html);
  const stored = join(STORED, `${name}.png`);
  if (process.env.UPDATE_PICTURES === '1') {
    mkdirSync(STORED, { recursive: true });
    writeFileSync(stored, now);
  }
  expect(existsSync(stored), `${stored} is not there; make it on purpose`).toBe(true);
  const share = await difference(now, readFileSync(stored));
  if (share > TOLERANCE) {
    mkdirSync(CHANGED, { recursive: true });
    writeFileSync(join(CHANGED, `${name}.png`), now);
  }
  expect(share).toBeLessThanOrEqual(TOLERANCE);
});

/** A card as it was printed when the pictures were made. */
function storedCard(name: string, id: string, airplane: 'ouzel' | 'wrenlet'): Card {
  const stored = join(STORED, `${name}.json`);
  if (process.env.UPDATE_PICTURES === '1') {
    const found = testOf(id);
    if (!found) throw new Error(`no test ${id}`);
    mkdirSync(STORED, { recursive: true });
    writeFileSync(stored, `${JSON.stringify(cardFor(found, demoAirplane(airplane)), null, 1)}\n`);
  }
  return cardSchema.parse(JSON.parse(readFileSync(stored, 'utf8')));
}

async function picture(html: string): Promise<Uint8Array> {
  const one = await pageWith(browser, html);
  try {
    await one.setViewport({ width: 1200, height: 900, deviceScaleFactor: 1 });
    const pages = await one.$('.pages');
    if (!pages) throw new Error('the document has no pages');
    return await pages.screenshot({ type: 'png' });
  } finally {
    await one.close();
  }
}

/** Share of points that differ clearly; 1 where the sizes differ. */
function difference(a: Uint8Array, b: Uint8Array): Promise<number> {
  const url = (bytes: Uint8Array) => `data:image/png;base64,${Buffer.from(bytes).toString('base64')}`;
  return page.evaluate(
    async (one, two) => {
      const points = async (source: string) => {
        const image = new Image();
        image.src = source;
        await image.decode();
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [image.width, image.height];
        const context = canvas.getContext('2d');
        if (!context) throw new Error('no canvas');
        context.drawImage(image, 0, 0);
        return {
          size: `${image.width} x ${image.height}`,
          data: context.getImageData(0, 0, image.width, image.height).data,
        };
      };
      const [first, second] = [await points(one), await points(two)];
      if (first.size !== second.size) return 1;
      let apart = 0;
      for (let i = 0; i < first.data.length; i += 4) {
        if (Math.abs((first.data[i] ?? 0) - (second.data[i] ?? 0)) > 128) apart += 1;
      }
      return apart / (first.data.length / 4);
    },
    url(a),
    url(b),
  );
}
