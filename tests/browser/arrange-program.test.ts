/** Arranging the program with the keyboard alone, without script; every page of it accessible and whole. */
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServiceInBrowser, seriousFindings, serviceInBrowser } from './service-in-browser.ts';

let service: ServiceInBrowser;
beforeAll(async () => {
  service = await serviceInBrowser();
  const left = { out: true, reason: 'No <b>need</b>.', instead: 'Never below 0.5 g.' };
  await fetch(`${service.address}/api/books/ouzel/tests/low-g-push/left-out`, {
    method: 'PUT',
    body: JSON.stringify(left),
    headers: { 'content-type': 'application/json' },
  });
  await service.ask('PUT', '/api/books/ouzel/own-tests/own-noise', {
    file: {
      title: 'Pump noise',
      stage: 'systems-flight',
      system: 'gear',
      purpose: 'Know the sound of a healthy pump.',
      pass: [{ text: 'Same sound each time', source: { says: 'own choice', mark: 'practice' } }],
      stop: ['any new sound'],
      flightMinutes: 10,
      blocks: 'once',
    },
  });
});
afterAll(() => service.close());

/** Tab until the focus lies on what is wanted; a person without a pointer has no other way. */
async function tabTo(page: Page, selector: string, most = 400): Promise<void> {
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press('Tab');
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
  }
  throw new Error(`the focus never reached ${selector}`);
}

const enter = (page: Page) => Promise.all([page.waitForNavigation(), page.keyboard.press('Enter')]);

describe('every page of it', () => {
  it.each([
    '/program',
    '/program/arrange?stage=envelope',
    '/program/replan?no-go=82',
    '/program/replan?repeat=weight-expansion*2',
    '/program/own',
    '/program/own/own-noise',
    '/program/own-noise',
    '/program/hours',
    '/outings/60',
  ])('%s is accessible, whole on a tablet, and reaches nothing outside', async (path) => {
    // the widest of them on a laptop too
    for (const width of path.includes('arrange') ? [820, 1280] : [820]) {
      const { page, status, complaints, outside } = await service.open(`/books/ouzel${path}`, { width });
      expect(status).toBe(200);
      expect([complaints, outside]).toEqual([[], []]);
      // what is folded away is looked at too
      await page.$$eval('details', (all) => {
        for (const one of all) one.open = true;
      });
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over).toBe(0);
      expect(await seriousFindings(page)).toEqual([]);
      const small = await page.$$eval('main button, main select, main summary', (all) =>
        all.map((one) => one.getBoundingClientRect().height).filter((height) => height > 0 && height < 43.5),
      );
      expect(small).toEqual([]);
      await page.close();
    }
  });
});

describe('with the keyboard and without script', () => {
  it('an outing goes later, and the page stays where it was', async () => {
    const { page } = await service.open('/books/ouzel/program/arrange?stage=systems-flight', { script: false });
    await tabTo(page, 'form:has([name=to]) button:not([disabled])');
    await enter(page);
    expect(new URL(page.url()).hash).toMatch(/^#outing-\d+$/);
    expect(await page.$eval('main, body', (one) => one.textContent)).toContain('Moved.');
    expect(await page.$eval('main, body', (one) => one.textContent)).toContain('Arranged by hand');
    await page.close();
  });

  it('a test is moved from its own page by a select', async () => {
    const { page } = await service.open('/books/ouzel/program/com-range-flight', { script: false });
    await tabTo(page, '.move-test summary');
    await page.keyboard.press('Enter');
    await tabTo(page, '.move-test select');
    await page.keyboard.press('ArrowDown');
    await tabTo(page, '.move-test button');
    await enter(page);
    expect(page.url()).toContain('/program/arrange?done=moved');
    await page.close();
  });

  it('a no-go leads to what could go instead, and the plan is put in force', async () => {
    const { page } = await service.open('/books/ouzel/outings/84', { script: false });
    await tabTo(page, '[name=what]');
    await page.keyboard.press('ArrowDown');
    await tabTo(page, '[name=note]');
    await page.keyboard.type('valve weeps');
    await tabTo(page, 'form[action$="/notes"] button');
    await enter(page);
    expect(page.url()).toContain('/program/replan?no-go=84');
    await tabTo(page, 'form[action$="/replan"] button');
    await enter(page);
    expect(page.url()).toContain('/program?done=arranged');
    await page.close();
  });
});
