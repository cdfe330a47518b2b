import { createServer } from 'node:http';
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import { openPrintingBrowser, type PrintingBrowser } from '../../../server/printing/browser.ts';
import { openPrinter, type Printer } from '../../../server/printing/print.ts';

const page = (body: string) =>
  `<!doctype html><html lang="en"><head><title>t</title></head><body>${body}</body></html>`;
const isPdf = (bytes: Uint8Array) => Buffer.from(bytes.subarray(0, 5)).toString('latin1') === '%PDF-';
const textOf = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');

/** End the browser under a page, as the system does when memory runs out. */
async function crash(one: Page): Promise<void> {
  const session = await one.createCDPSession();
  await session.send('Browser.crash').catch(() => undefined);
}

let browser: PrintingBrowser;
let printer: Printer;
beforeAll(() => {
  browser = openPrintingBrowser();
  printer = openPrinter({ browser });
});
afterAll(() => printer.close());

describe('the printing browser', () => {
  test('is kept and used again', async () => {
    expect(isPdf(await printer.printHtml(page('<p>one</p>')))).toBe(true);
    const first = browser.processId();
    await printer.printHtml(page('<p>two</p>'));
    expect(browser.processId()).toBe(first);
  });

  test('crashed in mid-print, it is started again and the print done', async () => {
    const seen: (number | null)[] = [];
    const bytes = await browser.withPage(async (one) => {
      seen.push(browser.processId());
      if (seen.length === 1) await crash(one);
      await one.setContent(page('<p>again</p>'));
      return await one.pdf();
    });
    expect(isPdf(bytes)).toBe(true);
    expect(seen).toHaveLength(2);
    expect(seen[1]).not.toBe(seen[0]);
  });

  test('crashed twice, it gives up in words, and works for the next', async () => {
    const printing = browser.withPage(async (one) => {
      await crash(one);
      await one.setContent(page('<p>never</p>'));
    });
    await expect(printing).rejects.toMatchObject({ problems: [{ code: 'print-failed' }] });
    expect(isPdf(await printer.printHtml(page('<p>next</p>')))).toBe(true);
  });

  test('cancelled in mid-print, the print ends and the browser stays', async () => {
    const stop = new AbortController();
    const printing = printer.printHtml(page('<p>x</p>'.repeat(20_000)), {
      signal: stop.signal,
      onProgress: (words) => {
        if (words === 'writing the PDF') stop.abort(new Error('cancelled'));
      },
    });
    await expect(printing).rejects.toThrow('cancelled');
    expect(isPdf(await printer.printHtml(page('<p>next</p>')))).toBe(true);
  });

  test('without a browser the answer says how to get one', async () => {
    const none = openPrinter({ browser: openPrintingBrowser({ find: () => null }) });
    await expect(none.printHtml(page(''))).rejects.toMatchObject({ problems: [{ code: 'no-browser' }] });
  });

  test('an idle browser is closed', async () => {
    const own = openPrintingBrowser({ idleMs: 50 });
    await own.withPage(async () => undefined);
    await expect.poll(() => own.processId(), { timeout: 5000 }).toBeNull();
    await own.close();
  });
});

describe('a page that is printed', () => {
  test('reaches nothing outside and runs no script', async () => {
    const asked: string[] = [];
    const server = createServer((request, response) => {
      asked.push(request.url ?? '');
      response.end('x');
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    const base = typeof address === 'object' && address ? `http://127.0.0.1:${address.port}` : '';
    try {
      const pdf = await printer.printHtml(
        page(`<p id="p">plain</p><img src="${base}/image"><iframe src="file:///etc/hostname"></iframe>
          <link rel="stylesheet" href="${base}/style"><script>document.title='scripted'</script>`),
      );
      expect(asked).toEqual([]);
      expect(textOf(pdf)).not.toContain('scripted');
    } finally {
      server.close();
    }
  });
});
