/** Every card, on every paper form, measured in the browser it is printed with. */
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  type Card,
  entryFields,
  flownCard,
  PAPERS,
  type Paper,
  packetOf,
  sheetsOf,
  type TypeSize,
} from '../../analysis/cards/index.ts';
import { CATALOGUE } from '../../analysis/catalogue/index.ts';
import { planProgram } from '../../analysis/program/index.ts';
import { cardsDocument } from '../../templates/cards/cards.view.ts';
import { type PrintOptions, printOptionsSchema } from '../../templates/cards/options.ts';
import { packetDocument } from '../../templates/packet/packet.view.ts';
import { cardsFor, demoAirplane, longestAirplane } from './demo-cards.ts';
import { measureSheets, type SheetMeasure } from './measure-sheets.ts';
import { openTestBrowser, pageWith } from './test-browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openTestBrowser();
});
afterAll(() => browser.close());

const ouzel = cardsFor(demoAirplane('ouzel'));
const wrenlet = cardsFor(demoAirplane('wrenlet'));
const longest = cardsFor(longestAirplane(), true);

async function measured(cards: Card[], paper: Paper, options: Partial<PrintOptions>): Promise<SheetMeasure[]> {
  return await measuredPage(cardsDocument(cards, paper, printOptionsSchema.parse(options)).html);
}

async function measuredPage(html: string): Promise<SheetMeasure[]> {
  const page = await pageWith(browser, html);
  try {
    return await measureSheets(page);
  } finally {
    await page.close();
  }
}

/** Points as set, less what the browser rounds away. */
const LEAST: Record<TypeSize, { all: number; inFlight: number; number: number }> = {
  normal: { all: 9, inFlight: 12, number: 18 },
  large: { all: 9, inFlight: 12, number: 18 },
};
const ROUNDING = 0.01;

function check(sheets: SheetMeasure[], type: TypeSize): void {
  const named = (list: (sheet: SheetMeasure) => string[]) =>
    sheets.flatMap((sheet) => list(sheet).map((one) => `${sheet.card} sheet ${sheet.sheet}: ${one}`)).slice(0, 12);
  expect(named((sheet) => sheet.overflows)).toEqual([]);
  expect(named((sheet) => sheet.smallBoxes)).toEqual([]);
  expect(named((sheet) => sheet.faint)).toEqual([]);
  expect(named((sheet) => sheet.coloured)).toEqual([]);
  expect(named((sheet) => sheet.bareNumbers)).toEqual([]);
  expect(named((sheet) => sheet.underClip)).toEqual([]);
  const least = LEAST[type];
  for (const sheet of sheets) {
    expect(sheet.smallest).toBeGreaterThanOrEqual(least.all - ROUNDING);
    if (sheet.smallestInFlight !== null)
      expect(sheet.smallestInFlight).toBeGreaterThanOrEqual(least.inFlight - ROUNDING);
    if (sheet.smallestNumber !== null) expect(sheet.smallestNumber).toBeGreaterThanOrEqual(least.number - ROUNDING);
  }
  // the stop frame: left, top and right edge at one place on every sheet
  for (const edge of [0, 1, 2] as const) {
    const places = sheets.flatMap((sheet) => (sheet.stop ? [sheet.stop[edge]] : []));
    expect(Math.max(...places) - Math.min(...places)).toBeLessThan(1);
  }
}

describe.each(PAPERS)('%s', (paper) => {
  test('Ouzel: every card that applies', async () => {
    const sheets = await measured(ouzel, paper, {});
    check(sheets, 'normal');
    expect(sheets).toHaveLength(ouzel.reduce((sum, card) => sum + sheetsOf(card, paper, 'normal').length, 0));
  });

  test('Wrenlet: every card that applies', async () => {
    check(await measured(wrenlet, paper, {}), 'normal');
  });

  test('all tests of the catalogue, everything fitted, longest names, wide units, large type', async () => {
    expect(longest).toHaveLength(CATALOGUE.length);
    check(await measured(longest, paper, { type: 'large' }), 'large');
  });
});

describe('flight packets', () => {
  test.each(PAPERS)('%s: briefing, emergency and return sheets of the first and a later flight', async (paper) => {
    for (const [airplane, number] of [
      ['ouzel', 5],
      ['wrenlet', 1],
    ] as const) {
      const described = demoAirplane(airplane);
      const packet = packetOf({
        airplane: described,
        program: planProgram(described),
        selection: { kind: 'flight', number },
        revision: 'rev 7',
        printed: '4 May 2031',
      });
      if (!packet) throw new Error('no such flight');
      for (const type of ['normal', 'large'] as const) {
        const { html } = packetDocument(packet, paper, printOptionsSchema.parse({ type }));
        check(await measuredPage(html), type);
      }
    }
  });
});

describe('flown cards', () => {
  test.each(PAPERS)('%s: a value in every box, each out of its band, from many sources', async (paper) => {
    const flown = ouzel.slice(40, 90).map((card) => {
      const { tables, boxes } = entryFields(card);
      const fields = [...tables.flatMap((table) => table.rows.flatMap((row) => row.fields)), ...boxes];
      const banded = withBands(card);
      return flownCard(
        banded,
        fields.map((field, i) => ({
          key: field.key,
          text: field.input === 'number' ? '−'.padEnd(Math.min(5, field.digits + 1), '8') : 'as seen',
          value: field.input === 'number' ? -888 : null,
          source: `engine monitor, stretch ${i % 12}, 12:03:10 to 12:33:10`,
        })),
      );
    });
    check(await measured(flown, paper, {}), 'normal');
  });

  /** Something expected in every single box and every column. */
  function withBands(card: Card): Card {
    const expect = { text: '88 ± 3', low: 85, high: 91, basis: 'run 1' };
    return {
      ...card,
      tables: card.tables.map((table) => ({
        ...table,
        columns: table.columns.map((column) => ({ ...column, expect })),
      })),
      boxes: card.boxes.map((box) => ({ ...box, expect })),
    };
  }
});

describe('the person’s choices', () => {
  test('left hand: what is written on stands left of what is read, nothing overflows', async () => {
    check(await measured(ouzel, 'letter-2up', { hand: 'left' }), 'normal');
  });

  test('backs for notes, under the longest names', async () => {
    check(await measured(longest.slice(0, 40), 'letter-2up', { backs: true, type: 'large' }), 'large');
  });

  test('night version: heavier strokes, nothing overflows', async () => {
    check(await measured(ouzel, 'a5', { night: true }), 'normal');
  });
});
