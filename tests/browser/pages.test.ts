import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { logIds, type ServiceInBrowser, seriousFindings, serviceInBrowser } from './service-in-browser.ts';

let service: ServiceInBrowser;
let log = '';
let airData = '';
let monitor = '';

beforeAll(async () => {
  service = await serviceInBrowser();
  const ids = await logIds(service, 'ouzel');
  log = ids.get('ground-run-2.csv') ?? '';
  airData = ids.get('airspeed-gps.csv') ?? '';
  monitor = ids.get('airspeed-monitor.csv') ?? '';
  await service.ask('POST', '/api/books/ouzel/results', { kind: 'cooling-ground', logs: [log], who: 'Ines Corbeau' });
  await service.ask('POST', '/api/books/ouzel/results', { kind: 'climb', logs: [log] });
  await service.ask('POST', '/api/books/ouzel/squawks', { text: '<b>left brake</b> soft' });
});
afterAll(() => service.close());

const PAGES: [string, () => string][] = [
  ['the shelf', () => '/'],
  ['a new book', () => '/books/new'],
  ['Home', () => '/books/ouzel'],
  ['Home of the simple airplane', () => '/books/wrenlet'],
  ['Airplane', () => '/books/ouzel/airplane'],
  ['its limits as a form', () => '/books/ouzel/airplane/edit/limits'],
  ['its fuel as a form', () => '/books/ouzel/airplane/edit/fuel'],
  ['a revision', () => '/books/ouzel/airplane/revisions/1'],
  ['an import', () => '/books/ouzel/airplane/import'],
  ['Program', () => '/books/ouzel/program'],
  ['the program drawn', () => '/books/ouzel/program/graph?test=stall-clean'],
  ['the whole plan', () => '/books/ouzel/program/plan'],
  ['a test', () => '/books/ouzel/program/heat-soak'],
  ['Cards', () => '/books/ouzel/cards?test=heat-soak'],
  ['Outings', () => '/books/ouzel/outings'],
  ['an outing', () => '/books/ouzel/outings/60'],
  ['Logs', () => '/books/ouzel/logs'],
  ['a log', () => `/books/ouzel/logs/${log}`],
  ['two clocks', () => `/books/ouzel/logs/${airData}/clock/${monitor}`],
  ['Results', () => '/books/ouzel/results'],
  ['a result', () => '/books/ouzel/results/1'],
  ['a refused result', () => '/books/ouzel/results/2'],
  ['written figures', () => '/books/ouzel/results/new/airspeed'],
  ['a card to write into', () => '/books/ouzel/written/new?test=airspeed-calibration-first'],
  ['a return sheet to write into', () => '/books/ouzel/written/new?test=return-60'],
  ['Gates', () => '/books/ouzel/gates'],
  ['a gate', () => '/books/ouzel/gates/B'],
  ['the record', () => '/books/ouzel/record'],
  ['Help', () => '/help'],
  ['a method', () => '/help/methods/airspeed'],
  ['the glossary', () => '/help/words'],
  ['the remarks', () => '/help/remarks'],
  ['the sources', () => '/help/sources'],
  ['the specimens', () => '/specimens'],
];

describe('every page', () => {
  it.each(PAGES)('%s is accessible, whole on a tablet, and reaches nothing outside', async (_, path) => {
    const { page, status, complaints, outside } = await service.open(path(), { width: 820 });
    expect(status).toBe(200);
    expect(complaints).toEqual([]);
    expect(outside).toEqual([]);
    const shape = await page.evaluate(() => ({
      overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      headings: document.querySelectorAll('h1').length,
      inline: document.querySelectorAll('[style]:not(canvas, .segment-end), style, script:not([src])').length,
      handlers: [...document.querySelectorAll('*')].filter((one) =>
        one.getAttributeNames().some((name) => name.startsWith('on')),
      ).length,
      language: document.documentElement.lang,
    }));
    expect(shape).toEqual({ overflow: 0, headings: 1, inline: 0, handlers: 0, language: 'en' });
    expect(await seriousFindings(page)).toEqual([]);
    await page.close();
  });

  it('fits a laptop too, and the dark', async () => {
    for (const path of ['/books/ouzel/results/1', `/books/ouzel/logs/${log}`, '/specimens']) {
      const { page, complaints } = await service.open(path, { width: 1280, dark: true });
      expect(complaints).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      expect(await seriousFindings(page)).toEqual([]);
      await page.close();
    }
  });

  it('would be told of a fault: the finder of faults finds one', async () => {
    const { page } = await service.open('/help');
    await page.evaluate(() => {
      const image = document.createElement('img');
      image.src = '/assets/mark.svg';
      document.querySelector('main')?.append(image);
    });
    expect((await seriousFindings(page)).join()).toContain('image-alt');
    await page.close();
  });

  it('begins with a way past the head, reached by the first Tab', async () => {
    const { page } = await service.open('/books/ouzel');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the content');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => location.hash)).toBe('#content');
    await page.close();
  });

  it('gives touch targets of 44 px to buttons, fields and ways through', async () => {
    const { page } = await service.open('/books/ouzel/airplane/edit/limits', { width: 820 });
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          'button:not([tabindex="-1"]), select, input:not([type=hidden], [type=checkbox]), .ways a',
        ),
      ]
        .map((one) => ({ height: one.getBoundingClientRect().height, what: one.outerHTML.slice(0, 80) }))
        .filter((one) => one.height < 44),
    );
    expect(small).toEqual([]);
    await page.close();
  });

  it('shows text from a person as text', async () => {
    const { page } = await service.open('/books/ouzel');
    expect(await page.evaluate(() => document.body.textContent)).toContain('<b>left brake</b> soft');
    await page.close();
  });

  it('that is not there says so in the same shape', async () => {
    for (const path of ['/nothing', '/books/nobody', '/books/ouzel/results/99', '/books/ouzel/program/no-such-test']) {
      const { page, status } = await service.open(path);
      expect(status).toBe(404);
      expect(await page.$eval('[role=alert]', (one) => one.textContent)).toBeTruthy();
      expect(await seriousFindings(page)).toEqual([]);
      await page.close();
    }
  });
});
