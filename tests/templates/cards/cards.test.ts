import { describe, expect, test } from 'vitest';
import { PAPERS, sheetsOf, words } from '../../../analysis/cards/index.ts';
import { cardsDocument, cardsHtml } from '../../../templates/cards/cards.view.ts';
import { printOptionsSchema } from '../../../templates/cards/options.ts';
import { NUMBER, specimenCard } from '../../analysis/cards/specimen.ts';

const card = specimenCard(6, 5, 6);

describe('cards as HTML', () => {
  test('one article a sheet, the same document for screen and paper', () => {
    for (const paper of PAPERS) {
      const { html, sheets } = cardsDocument([card], paper);
      expect(sheets).toBe(sheetsOf(card, paper, 'normal').length);
      expect(html.match(/<article/g)).toHaveLength(sheets);
      expect(cardsHtml([card], paper)).toBe(html);
    }
  });

  test('text is escaped: nothing a person wrote becomes markup', () => {
    const nasty = '<img src=x onerror=alert(1)>"\'&';
    const html = cardsHtml([{ ...card, title: nasty, aim: nasty, steps: [words(nasty)] }], 'a5');
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;img');
  });

  test('numbers stand with their units, estimates as such, missing ones as missing', () => {
    const line = [
      { ...NUMBER('95', 'KIAS'), estimated: true },
      { kind: 'missing' as const, path: 'limits.oil.caution', meaning: 'oil caution', unit: '°C' },
    ];
    const html = cardsHtml([{ ...card, steps: [line] }], 'a5');
    expect(html).toContain('<b>95</b>&nbsp;KIAS est.');
    expect(html).toContain('<i>missing</i>&nbsp;°C');
  });

  test('a letter the typeface lacks brings the fallback face along, else it stays away', () => {
    expect(cardsHtml([card], 'a5')).not.toContain('Card Fallback";font-weight');
    expect(cardsHtml([{ ...card, aim: 'wind ≤ 15 kt' }], 'a5')).toContain('Card Fallback";font-weight');
  });

  test('measured values stand in their boxes, marked by shape where they left the band', () => {
    const [table] = card.tables;
    if (!table) throw new Error('the specimen has a table');
    const rows = table.rows.map((row, i) =>
      i > 0
        ? row
        : { ...row, cells: { c1: { expect: null, measured: { text: '107', outside: 'above' as const, source: 1 } } } },
    );
    const html = cardsHtml([{ ...card, tables: [{ ...table, rows }], sources: ['log, 12:03 to 12:05'] }], 'a5');
    expect(html).toMatch(/<b>▲<\/b>107<sup>1<\/sup>/);
    expect(html).toContain('log, 12:03 to 12:05');
  });

  test('left hand: the box to write in stands before what is expected', () => {
    const [table] = card.tables;
    if (!table) throw new Error('the specimen has a table');
    const columns = table.columns.map((column, i) => ({ ...column, expectsByRow: i === 0 }));
    const expected = { expect: { text: '98 ± 3', low: 95, high: 101, basis: 'run 1' }, measured: null };
    const rows = table.rows.map((row) => ({ ...row, cells: { c1: expected } }));
    const banded = { ...card, tables: [{ ...table, columns, rows }] };
    const order = (hand: 'left' | 'right') => {
      const html = cardsHtml([banded], 'a5', printOptionsSchema.parse({ hand }));
      return html.indexOf('98 ± 3') < html.indexOf('data-box="t1.r1.c1"');
    };
    expect(order('right')).toBe(true);
    expect(order('left')).toBe(false);
  });
});
