/** What a person does with keyboard, pointer and files, on the pages that have a module of their own. */
import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { logIds, type ServiceInBrowser, serviceInBrowser } from './service-in-browser.ts';

let service: ServiceInBrowser;
let log = '';

beforeAll(async () => {
  service = await serviceInBrowser();
  log = (await logIds(service, 'ouzel')).get('ground-run-2.csv') ?? '';
  await service.ask('POST', '/api/books/ouzel/results', { kind: 'cooling-ground', logs: [log] });
});
afterAll(() => service.close());

const textOf = (page: Page, selector: string) => page.$eval(selector, (one) => one.textContent ?? '');

/** Colours that differ from the paper, in the middle of a canvas. */
const drawnPixels = (page: Page) =>
  page.$eval('canvas', (canvas) => {
    const pen = canvas.getContext('2d');
    const { data } = pen?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] };
    let drawn = 0;
    for (let i = 3; i < data.length; i += 4) if ((data[i] ?? 0) > 0) drawn += 1;
    return drawn;
  });

describe('a chart', () => {
  it('is drawn, described, and its lines are shown and hidden by keyboard', async () => {
    const { page } = await service.open('/books/ouzel/results/1');
    const before = await drawnPixels(page);
    expect(before).toBeGreaterThan(5000);
    expect(await page.$eval('canvas', (one) => one.getAttribute('aria-label'))).toMatch(
      /Coolant temperature reaches \d+ °C/,
    );
    await page.focus('.legend button');
    await page.keyboard.press('Space');
    expect(await page.$eval('.legend button', (one) => one.getAttribute('aria-pressed'))).toBe('false');
    expect(await drawnPixels(page)).not.toBe(before);
    await page.close();
  });

  it('of a log fetches what is in view, and the keys move the view', async () => {
    const { page } = await service.open(`/books/ouzel/logs/${log}`);
    const asked: URL[] = [];
    page.on('request', (request) => {
      if (request.url().includes('/samples')) asked.push(new URL(request.url()));
    });
    await page.focus('canvas');
    await page.keyboard.press('+');
    await page.waitForNetworkIdle({ idleTime: 300 });
    const [first] = asked;
    expect(Number(first?.searchParams.get('to'))).toBeLessThan(5483);
    expect(Number(first?.searchParams.get('from'))).toBeGreaterThan(0);
    await page.keyboard.press('0');
    await page.waitForNetworkIdle({ idleTime: 300 });
    expect(Number(asked.at(-1)?.searchParams.get('from'))).toBeLessThan(1);
    await page.close();
  });

  it('opens on the span that a number points to', async () => {
    const { page } = await service.open(`/books/ouzel/logs/${log}?from=1239&to=1874`);
    const description = await page.$eval('figure', (one) => JSON.parse(one.dataset.chart ?? '{}'));
    expect(description.view).toEqual({ from: 1239, to: 1874 });
    expect(description.whole).toEqual({ from: 0, to: 5483 });
    await page.close();
  });
});

describe('a segment', () => {
  it('is moved by its edge with the arrow keys and by the pointer, and reduced again with the reason', async () => {
    const { page } = await service.open('/books/ouzel/results/1');
    const field = 'input[name="segments.5.fromSeconds"]';
    const edge = '.segment-end[aria-label="6: start"]';
    const secondsIn = () => page.$eval(field, (one) => Number(one.value));
    const before = await secondsIn();
    await page.focus(edge);
    await page.keyboard.press('ArrowRight');
    expect(await secondsIn()).toBe(before + 1);
    await page.keyboard.down('Shift');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.up('Shift');
    expect(await secondsIn()).toBe(before + 11);
    expect(await page.$eval(edge, (one) => Number(one.getAttribute('aria-valuenow')))).toBe(before + 11);

    const box = await (await page.$(edge))?.boundingBox();
    const middle = { x: (box?.x ?? 0) + 22, y: (box?.y ?? 0) + 40 };
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x + 30, middle.y, { steps: 3 });
    await page.mouse.up();
    expect(await secondsIn()).toBeGreaterThan(before + 60);

    await page.$eval(field, (one) => {
      one.value = '1300';
    });
    await page.type('#f-reason', 'the door still moved');
    await Promise.all([page.waitForNavigation(), page.click('#segments-form button')]);
    expect(page.url()).toContain('/results/2?done=reduced');
    expect(await page.$$eval('.flags .about', (all) => all.map((one) => one.textContent))).toContain('Set by hand');
    await page.close();
  });

  it('moved without a reason is not taken, and what was typed stays', async () => {
    const { page } = await service.open('/books/ouzel/results/1');
    await Promise.all([page.waitForNavigation(), page.click('#segments-form button')]);
    expect(await textOf(page, '[role=alert]')).toContain('No reason is given');
    await page.close();
  });
});

describe('two clocks', () => {
  it('are moved against each other by keys, by pointer and by number; what is kept is used and can be taken back', async () => {
    const ids = await logIds(service, 'ouzel');
    const place = `/books/ouzel/logs/${ids.get('airspeed-gps.csv')}/clock/${ids.get('airspeed-monitor.csv')}`;
    const { page, complaints } = await service.open(place);
    const shift = () => page.$eval('#f-shift', (one) => Number((one as HTMLInputElement).value));
    const told = await shift();
    expect(await drawnPixels(page)).toBeGreaterThan(5000);
    expect(await textOf(page, 'output')).toMatch(/Agreement of the signals at [\d.]+ s: 0\.9/);
    await page.focus('.move');
    await page.keyboard.press('ArrowRight');
    expect(await shift()).toBeCloseTo(told + 0.1, 6);
    await page.keyboard.down('Shift');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.up('Shift');
    expect(await shift()).toBeCloseTo(told - 9.9, 6);
    expect(await page.$eval('.move', (one) => Number(one.getAttribute('aria-valuenow')))).toBeCloseTo(told - 9.9, 6);
    const box = await (await page.$('.move'))?.boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    const grip = { x: (box?.x ?? 0) + 200, y: (box?.y ?? 0) + 20 };
    await page.mouse.move(grip.x, grip.y);
    await page.mouse.down();
    await page.mouse.move(grip.x + 30, grip.y, { steps: 3 });
    await page.mouse.up();
    expect(await shift()).toBeGreaterThan(told + 20);
    expect(await textOf(page, 'output')).not.toMatch(/s: 0\.9\d \(/);
    await page.$eval('#f-shift', (one) => {
      (one as HTMLInputElement).value = '';
    });
    await page.type('#f-shift', '41.3');
    await Promise.all([page.waitForNavigation(), page.click('form.clocks button.main')]);
    expect(await textOf(page, '.lead')).toContain('starts 41.3 s after airspeed-gps.csv: set by hand');
    await Promise.all([page.waitForNavigation(), page.click('form:not(.clocks) input[name=shift] ~ .buttons button')]);
    expect(await shift()).toBeCloseTo(told, 6);
    expect(complaints).toEqual([]);
    await page.close();
  });
});

describe('files', () => {
  it('are dropped several at once, each with what came of it', async () => {
    const good = join(tmpdir(), `proveout-drop-${process.pid}.csv`);
    const bad = join(tmpdir(), `proveout-drop-${process.pid}-empty.csv`);
    const rows = Array.from(
      { length: 30 },
      (_, i) => `2031-05-04 10:00:${String(i).padStart(2, '0')},${2000 + i},80.${i % 10}`,
    );
    writeFileSync(good, `Time,Engine speed [rpm],Coolant temp [degC]\n${rows.join('\n')}\n`);
    writeFileSync(bad, '');
    const { page } = await service.open('/books/ouzel/logs');
    const input = await page.$('#log-file');
    if (!input) throw new Error('the page has no file field');
    // the field is narrowed to an input element by its own selector
    await (input as unknown as { uploadFile(...paths: string[]): Promise<void> }).uploadFile(good, bad);
    await page.click('form.drop button');
    await page.waitForFunction(
      () => /30 rows/.test(document.body.textContent) && /could not be read/.test(document.body.textContent),
    );
    expect(await page.$$eval('form.drop li a', (all) => all.length)).toBe(2);
    await page.close();
  });
});

describe('cards', () => {
  it('are shown as they will be printed, and printed with progress to a PDF', async () => {
    const { page } = await service.open('/books/ouzel/cards?test=heat-soak');
    const frame = await (await page.$('iframe'))?.contentFrame();
    expect(await frame?.evaluate(() => document.body.textContent)).toContain('Heat soak');
    await page.click('form[data-print] button');
    const link = await page.waitForSelector('form[data-print] a.button', { timeout: 60_000 });
    const address = await link?.evaluate((one) => one.getAttribute('href'));
    const pdf = await fetch(`${service.address}${address}`);
    expect(pdf.headers.get('content-type')).toContain('application/pdf');
    expect(
      Buffer.from(await pdf.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    await page.close();
  });
});

describe('without script', () => {
  it('a description is edited: a mistake is told at its field with what was typed, then saved as a revision', async () => {
    const { page } = await service.open('/books/ouzel/airplane/edit/limits', { script: false });
    const value = 'input[name="limits.coolant.caution.value"]';
    const typeInto = async (selector: string, text: string) => {
      await page.focus(selector);
      await page.keyboard.down('Control');
      await page.keyboard.press('a');
      await page.keyboard.up('Control');
      await page.keyboard.type(text);
    };
    await typeInto(value, 'hot');
    await Promise.all([page.waitForNavigation(), page.click('button.main')]);
    expect(await page.$eval(value, (one) => [one.value, one.getAttribute('aria-invalid')])).toEqual(['hot', 'true']);
    await typeInto(value, '104');
    await typeInto('#f-why', 'gauge checked in boiling water');
    await Promise.all([page.waitForNavigation(), page.click('button.main')]);
    // saved; its manoeuvring speed has been above what stall and load factor allow before, and is told again
    expect(page.url()).toContain('done=doubted');
    const { airplane } = await service.ask<{ airplane: { revision: number; revisions: { why: string }[] } }>(
      'GET',
      '/api/books/ouzel',
    );
    expect(airplane.revision).toBe(2);
    expect(airplane.revisions.at(-1)?.why).toBe('gauge checked in boiling water');
    await page.goto(`${service.address}/books/ouzel/airplane/revisions/2`);
    expect(await textOf(page, 'main')).toMatch(/105 °C[\s\S]*104 °C/);
    await page.close();
  });

  it('a channel table is confirmed, and a log reduced', async () => {
    const { page } = await service.open(`/books/ouzel/logs/${log}`, { script: false });
    await page.type('#f-offset', '+01:00');
    await Promise.all([page.waitForNavigation(), page.click('form.map button.main')]);
    expect(await textOf(page, 'main')).toContain('Read by the channel table you confirmed');
    expect(await textOf(page, 'main')).toContain('12:41 UTC');
    await Promise.all([page.waitForNavigation(), page.click('form[action$="/results"] button.main')]);
    expect(page.url()).toContain('done=reduced');
    await page.close();
  });
});
