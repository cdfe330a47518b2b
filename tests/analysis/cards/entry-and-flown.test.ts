import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readAirplane } from '../../../analysis/airplane/index.ts';
import { type Card, entryFields, fillCard, flownCard, outsideOf } from '../../../analysis/cards/index.ts';
import { CATALOGUE, testOf } from '../../../analysis/catalogue/index.ts';
import { cardsHtml } from '../../../templates/cards/cards.view.ts';

const ouzel = readAirplane(JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8'))).airplane;
const place = { outing: 'Flight 1', place: 'Flight 1', revision: 'rev 7', printed: '4 May 2031' };

function card(id: string, predicted = false): Card {
  const found = testOf(id);
  if (!found || !ouzel) throw new Error(`no test ${id}`);
  const readings = [
    {
      quantity: 'coolant-temperature',
      table: 'fan on',
      row: '9',
      value: 368.15,
      low: 365.15,
      high: 371.15,
      unit: 'K',
      basis: 'run 2',
    },
  ];
  return fillCard({
    test: found,
    airplane: ouzel,
    place,
    ...(predicted ? { predictions: { readings, note: 'run 2, air 18 °C' } } : {}),
  });
}

describe('the entry page of a card', () => {
  test('has a field for each box of the paper, and no other', () => {
    for (const one of CATALOGUE) {
      if (!ouzel) throw new Error('no airplane');
      const filled = fillCard({ test: one, airplane: ouzel, place });
      const printed = [...cardsHtml([filled], 'a5').matchAll(/data-box="([^"]+)"/g)].map(([, key]) => key);
      expect([...entryFields(filled).order].sort(), one.id).toEqual([...printed].sort());
    }
  });

  test('fields say where they are read, with unit and plausible range in the unit of the box', () => {
    const field = entryFields(card('ground-cooling-fan-hold')).tables[0]?.rows[3]?.fields[0];
    expect(field).toMatchObject({ at: 'fan on, 9 min', label: 'coolant out', unit: '°C', input: 'number' });
    // the glossary's 233 to 423 K
    expect(field?.plausible?.map(Math.round)).toEqual([-40, 150]);
  });

  test('a difference has no range of its own', () => {
    const lost = entryFields(card('stall-clean')).tables[0]?.rows[0]?.fields.find((one) => one.label === 'height lost');
    expect(lost?.plausible).toBeNull();
  });

  test('what is predicted stands beside the field', () => {
    const field = entryFields(card('ground-cooling-fan-hold', true)).tables[0]?.rows[3]?.fields[0];
    expect(field?.expect).toMatchObject({ text: '95 ± 3' });
  });
});

describe('a flown card', () => {
  const printed = card('ground-cooling-fan-hold', true);
  const key = entryFields(printed).tables[0]?.rows[3]?.fields[0]?.key ?? '';

  test('holds the values in their boxes, marked where they left the band, with their sources', () => {
    const flown = flownCard(printed, [
      { key, text: '99.4', value: 99.4, source: 'engine monitor, 12:03 to 12:04' },
      { key: 'fuel-left', text: '61', value: 61, source: 'written by hand' },
    ]);
    const cell = flown.tables[0]?.rows[3]?.cells['coolant-out'];
    expect(cell).toMatchObject({ expect: { text: '95 ± 3' }, measured: { text: '99.4', outside: 'above', source: 1 } });
    expect(flown.log.at(-1)?.measured).toEqual({ text: '61', outside: null, source: null });
    expect(flown.sources).toEqual(['engine monitor, 12:03 to 12:04']);
    expect(flown.exceeded).toEqual([{ way: 'above', text: 'fan on, 9 min: coolant out 99.4 °C is above 95 ± 3 °C' }]);
  });

  test('without readings it is the card as printed', () => {
    expect(flownCard(printed, [])).toEqual(printed);
  });

  test('the ends of the band belong to it', () => {
    const band = { text: '95 ± 3', low: 92, high: 98, basis: '' };
    expect([91.9, 92, 98, 98.1].map((value) => outsideOf(value, band))).toEqual(['below', null, null, 'above']);
    expect(outsideOf(120, null)).toBeNull();
    expect(outsideOf(120, { ...band, high: null })).toBeNull();
  });
});
