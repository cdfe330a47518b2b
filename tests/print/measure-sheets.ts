/** Measures a page of cards in the browser: what overflows, how small, how light, where the stop frame stands. */
import type { Page } from 'puppeteer';

export interface SheetMeasure {
  card: string;
  sheet: number;
  /** mm past its place, what, and the text; empty where all is in place */
  overflows: string[];
  /** smallest letters, points; of what is read in flight; of numbers to fly */
  smallest: number;
  smallestInFlight: number | null;
  smallestNumber: number | null;
  /** boxes lower than 9 mm or narrower than 18 mm for three digits */
  smallBoxes: string[];
  /** text or lines lighter than 60 % black */
  faint: string[];
  /** ink that is a colour: it would vanish or change under a red lamp */
  coloured: string[];
  /** stop frame: left, top, right, mm from the sheet's corner; null on sheets without one */
  stop: [number, number, number] | null;
  /** numbers without a unit behind them */
  bareNumbers: string[];
  /** lowest point of what stands under the clip that is not identity */
  underClip: string[];
}

/**
 * Measure every card sheet of the document in the page.
 * @param page a page with a card document loaded
 * @returns one entry a sheet, in document order
 */
export function measureSheets(page: Page): Promise<SheetMeasure[]> {
  return page.evaluate(() => {
    const MM = 25.4 / 96;
    const EPS = 0.5;
    const round = (n: number) => Math.round(n * 100) / 100;
    // letters of a drawing are as large as the drawing is scaled
    const scaleOf = (element: Element) =>
      element instanceof SVGGraphicsElement ? (element.getScreenCTM()?.a ?? 1) : 1;
    const points = (element: Element) =>
      Number.parseFloat(getComputedStyle(element).fontSize) * 0.75 * scaleOf(element);
    const said = (element: Element) => (element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 60);

    const lighter = (colour: string) => {
      const [r = 0, g = 0, b = 0, alpha = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
      const value = 255 - alpha * (255 - Math.max(r, g, b));
      return value > 255 * 0.6;
    };

    return [...document.querySelectorAll('article.sheet')].map((sheet) => {
      const box = sheet.getBoundingClientRect();
      const inside = sheet.querySelector('.inside')?.getBoundingClientRect() ?? box;
      const floor = sheet.querySelector('.foot')?.getBoundingClientRect().top ?? inside.bottom;
      const overflows: string[] = [];
      const outOf = (rect: DOMRect, room: DOMRect, name: string) => {
        const past = Math.max(
          room.left - rect.left,
          rect.right - room.right,
          room.top - rect.top,
          rect.bottom - room.bottom,
        );
        if (past > EPS) overflows.push(`${name} by ${round(past * MM)} mm`);
      };
      for (const element of sheet.querySelectorAll('.inside *')) {
        const rect = element.getBoundingClientRect();
        if (rect.width === 0 && rect.height === 0) continue;
        outOf(rect, inside, `${element.className || element.tagName} "${said(element)}"`);
      }
      const parts = [...sheet.querySelectorAll('.parts > *')];
      for (const part of parts) {
        const rect = part.getBoundingClientRect();
        if (rect.bottom - floor > EPS)
          overflows.push(`${part.className} runs ${round((rect.bottom - floor) * MM)} mm into the foot`);
      }
      const title = sheet.querySelector('.title');
      const stop = sheet.querySelector('.stop');
      const aim = sheet.querySelector('.aim');
      if (title && aim && aim.getBoundingClientRect().bottom - title.getBoundingClientRect().bottom > EPS) {
        overflows.push(
          `title block by ${round((aim.getBoundingClientRect().bottom - title.getBoundingClientRect().bottom) * MM)} mm`,
        );
      }
      // texts wider than what holds them: cells, boxes, strip, head rows
      for (const holder of sheet.querySelectorAll(
        'td, th, .box, .strip li, .identity p, .identity h1, .labelled, .stop li',
      )) {
        const room = holder.getBoundingClientRect();
        const range = document.createRange();
        range.selectNodeContents(holder);
        for (const rect of range.getClientRects()) {
          if (rect.width === 0) continue;
          const past = Math.max(room.left - rect.left, rect.right - room.right);
          const tall = Math.max(room.top - rect.top, rect.bottom - room.bottom) - 3;
          if (past > EPS)
            overflows.push(`text of ${holder.className || holder.tagName} "${said(holder)}" by ${round(past * MM)} mm`);
          if (tall > EPS && holder.closest('table'))
            overflows.push(`text of ${holder.tagName} "${said(holder)}" taller by ${round(tall * MM)} mm`);
        }
      }
      // rows keep the height they were given
      for (const row of sheet.querySelectorAll<HTMLElement>('tr[style], .box-row[style]')) {
        const given = Number.parseFloat(row.style.height) / MM;
        const past = row.getBoundingClientRect().height - given;
        if (past > 2) overflows.push(`row "${said(row)}" grew by ${round(past * MM)} mm`);
      }

      const texts = [...sheet.querySelectorAll('.inside *')].filter((element) =>
        [...element.childNodes].some(
          (node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '',
        ),
      );
      // the number of a source is read at the desk
      const flown = texts.filter(
        (element) =>
          element.tagName !== 'SUP' &&
          element.closest('.stop, .steps, .strip b, .drill, td, th.head, th.group, th.run'),
      );
      const least = (elements: Element[]) => (elements.length === 0 ? null : Math.min(...elements.map(points)));
      const numbers = [...sheet.querySelectorAll('.stop b, .steps b, .drill b')].filter((element) =>
        /\d/.test(said(element)),
      );

      const smallBoxes: string[] = [];
      for (const one of sheet.querySelectorAll<HTMLElement>('[data-box], .initials .box, .to-set')) {
        const rect = one.getBoundingClientRect();
        const height = round(rect.height * MM);
        const width = round(rect.width * MM);
        if (height < 9 || (width < 18 && !one.closest('.initials'))) {
          smallBoxes.push(`${one.dataset.box ?? one.className} ${width} x ${height} mm`);
        }
      }

      const faint = texts.filter((element) => lighter(getComputedStyle(element).color)).map(said);
      for (const element of sheet.querySelectorAll('td, th, .box, .stop, .strip li, .identity, .line')) {
        const style = getComputedStyle(element);
        for (const side of ['top', 'right', 'bottom', 'left'] as const) {
          if (Number.parseFloat(style.getPropertyValue(`border-${side}-width`)) === 0) continue;
          if (lighter(style.getPropertyValue(`border-${side}-color`)))
            faint.push(`${side} line of ${element.className || element.tagName}`);
        }
      }

      const isColour = (colour: string) => {
        const [r = 0, g = 0, b = 0, alpha = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
        return alpha > 0 && colour.startsWith('rgb') && Math.max(r, g, b) - Math.min(r, g, b) > 0;
      };
      const coloured = [...sheet.querySelectorAll('*')].flatMap((element) => {
        const style = getComputedStyle(element);
        const inks = [style.color, style.backgroundColor, style.borderTopColor, style.borderLeftColor];
        if (element instanceof SVGElement) inks.push(style.fill, style.stroke);
        return inks.some(isColour) ? [`${element.className || element.tagName} "${said(element)}"`] : [];
      });

      const frame = stop?.getBoundingClientRect() ?? box;
      const bareNumbers = [
        ...sheet.querySelectorAll('.stop b, .steps b, .ticks b, .drill b, .facts span b, .list b, tbody th b'),
      ]
        .filter((element) => /^[\d−.,]+$/.test(said(element)))
        .filter((element) => !/^\u00a0\S/.test(element.nextSibling?.textContent ?? ''))
        .map(said);
      const underClip = [...sheet.querySelectorAll('.inside > *:not(.identity), .title, .stop')]
        .filter((element) => element.getBoundingClientRect().top - box.top < 12 / MM - EPS)
        .map((element) => element.className);
      const article = sheet instanceof HTMLElement ? sheet : null;
      return {
        card: article?.dataset.card ?? article?.dataset.page ?? `back of ${article?.dataset.back}`,
        sheet: Number(article?.dataset.sheet ?? 0),
        overflows: [...new Set(overflows)],
        smallest: least(texts) ?? 0,
        smallestInFlight: least(flown),
        smallestNumber: least(numbers),
        smallBoxes,
        faint: [...new Set(faint)],
        coloured: [...new Set(coloured)],
        stop: stop && [
          round((frame.left - box.left) * MM),
          round((frame.top - box.top) * MM),
          round((frame.right - box.left) * MM),
        ],
        bareNumbers,
        underClip,
      } satisfies SheetMeasure;
    });
  });
}
