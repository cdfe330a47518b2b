/** The program drawn, walked by keyboard, without script, and in the dark. */
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServiceInBrowser, seriousFindings, serviceInBrowser } from './service-in-browser.ts';

let service: ServiceInBrowser;
beforeAll(async () => {
  service = await serviceInBrowser();
});
afterAll(() => service.close());

const focused = (page: Page) => page.evaluate(() => document.activeElement?.id ?? '');

describe('the program drawn', () => {
  it('is walked by arrow keys along its lines, and a test is chosen by Enter', async () => {
    const { page, complaints } = await service.open('/books/ouzel/program/graph?test=first-flight', { width: 1280 });
    await page.$eval('#first-flight', (one) => one instanceof SVGAElement && one.focus());
    await page.keyboard.press('ArrowUp');
    expect(await focused(page)).toBe('first-flight-readiness');
    await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toBe('first-flight');
    await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toBe('post-flight-inspection');
    await page.keyboard.press('ArrowLeft');
    expect(await focused(page)).toBe('first-flight');
    await page.keyboard.press('ArrowRight');
    await Promise.all([page.waitForNavigation(), page.keyboard.press('Enter')]);
    expect(new URL(page.url()).searchParams.get('test')).toBe('post-flight-inspection');
    expect(await page.$eval('aside h2', (one) => one.textContent)).toMatch(/Inspection after the first flight/);
    expect(complaints).toEqual([]);
    await page.close();
  });

  it('has every test as a link in reading order, script or not', async () => {
    const { page } = await service.open('/books/wrenlet/program/graph', { script: false });
    const found = await page.$$eval('.graph a.box', (all) => all.map((one) => one.getAttribute('href') ?? ''));
    expect(found.length).toBe(104);
    expect(found.every((href) => href.includes('test='))).toBe(true);
    await page.close();
  });

  it.each([
    [820, false],
    [1280, true],
  ])('is accessible and whole at %i px, dark: %s', async (width, dark) => {
    for (const query of ['titles=all&test=heat-soak', 'status=accepted']) {
      const { page, complaints } = await service.open(`/books/ouzel/program/graph?${query}`, { width, dark });
      expect(complaints).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      expect(await seriousFindings(page)).toEqual([]);
      await page.close();
    }
  });
});
