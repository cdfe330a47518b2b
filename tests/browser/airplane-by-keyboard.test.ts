/** An airplane described by keyboard alone, without script: ten questions, a doubt at its field, a revision compared. */
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ANSWERS } from '../templates/forms/start-answers.ts';
import { type ServiceInBrowser, serviceInBrowser } from './service-in-browser.ts';

let service: ServiceInBrowser;
beforeAll(async () => {
  service = await serviceInBrowser();
});
afterAll(() => service.close());

const nameOf = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('name') ?? '');

/** Tab until something is reached. */
async function tabTo(page: Page, reached: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 250; tries++) {
    await page.keyboard.press('Tab');
    if (await reached()) return;
  }
  throw new Error('the keyboard never got there');
}

const send = (page: Page) => Promise.all([page.waitForNavigation(), page.keyboard.press('Enter')]);

describe('by keyboard alone', () => {
  it('a book is started, a figure that does not fit is told at its field, and a revision is compared', async () => {
    const { page } = await service.open('/books/new', { width: 820, script: false });
    const left = new Set(Object.keys(ANSWERS));
    await tabTo(page, async () => {
      const name = await nameOf(page);
      if (left.delete(name)) await page.keyboard.type(ANSWERS[name] ?? '');
      return left.size === 0;
    });
    await send(page);
    expect(page.url()).toContain('/airplane?done=started');
    const book = new URL(page.url()).pathname.replace(/\/airplane$/, '');
    expect(await page.$eval('#to-confirm', (one) => one.textContent)).toBe('To be confirmed');

    await page.goto(`${service.address}${book}/airplane/edit/speeds`);
    await tabTo(page, async () => (await nameOf(page)) === 'speeds.approach.value');
    await page.keyboard.type('43');
    await send(page);
    expect(page.url()).toContain('done=doubted');
    const doubt = await page.$eval('.flags a[href*="speeds"]', (one) => one.getAttribute('href') ?? '');
    await page.goto(`${service.address}${doubt}`);
    expect(await page.$eval('#f-speeds-approach-doubt', (one) => one.textContent)).toContain(
      'below 1.3 x the landing stall',
    );

    await page.goto(`${service.address}${book}/airplane/revisions/2`);
    expect(await page.$eval('main', (one) => one.textContent)).toContain('speeds.approach');
    await page.close();
  });
});
