import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readAirplane } from '../../../analysis/airplane/index.ts';
import { cardPredictions, expectationOf, fillCard } from '../../../analysis/cards/index.ts';
import { testOf } from '../../../analysis/catalogue/index.ts';
import type { Prediction } from '../../../analysis/reductions/index.ts';

const one = { quantity: 'coolant-temperature', unit: 'K', basis: 'run 2' };

describe('a prediction as it is printed', () => {
  test('an even band as value and half-width, whole degrees', () => {
    // 371.15 K is 98 °C; 3.2 K either side
    const text = expectationOf({ ...one, value: 371.15, low: 367.95, high: 374.35 }, 'degC')?.text;
    expect(text).toBe('98 ± 3');
  });

  test('a band under one unit keeps its decimals', () => {
    expect(expectationOf({ ...one, value: 371.15, low: 370.75, high: 371.55 }, 'degC')?.text).toBe('98.0 ± 0.4');
  });

  test('an uneven band as its ends, one end alone as a bound', () => {
    expect(expectationOf({ ...one, value: 371.15, low: 370.15, high: 378.15 }, 'degC')?.text).toBe('97 to 105');
    expect(expectationOf({ ...one, value: null, low: null, high: 378.15 }, 'degC')?.text).toBe('under 105');
    expect(expectationOf({ ...one, value: null, low: 370.15, high: null }, 'degC')?.text).toBe('over 97');
  });

  test('in the unit of the box; without a band, or in another kind of unit, nothing', () => {
    expect(expectationOf({ ...one, value: 371.15, low: 368.15, high: 374.15 }, 'degF')?.text).toBe('208 ± 5');
    expect(expectationOf({ ...one, value: 371.15, low: null, high: null }, 'degC')).toBeNull();
    expect(expectationOf({ ...one, value: 371.15, low: 368.15, high: 374.15 }, 'kt')).toBeNull();
  });
});

const { airplane } = readAirplane(JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8')));
const hold = testOf('ground-cooling-fan-hold');

function filled(prediction: Prediction) {
  if (!airplane || !hold) throw new Error('the demo data are not there');
  return fillCard({
    test: hold,
    airplane,
    place: { outing: 'Flight 1', place: 'Flight 1', revision: 'rev 7', printed: '4 May 2031' },
    predictions: cardPredictions(prediction, 'runs 1 and 2, air 18 °C'),
  });
}

describe('predictions on a card', () => {
  const prediction: Prediction = {
    kind: 'cooling-ground',
    status: 'predicted',
    quantities: [],
    tables: [
      {
        name: 'next-run',
        columns: [
          { name: 'time', unit: 's' },
          { name: 'coolant-temperature', unit: 'K' },
          { name: 'coolant-temperature-low', unit: 'K' },
          { name: 'coolant-temperature-high', unit: 'K' },
        ],
        rows: [
          [0, 357.15, 355.15, 359.15],
          [180, 364.15, 361.15, 367.15],
          [360, 368.15, 365.15, 371.15],
        ],
      },
    ],
    flags: [],
  };

  test('stand beside the boxes of their minutes, and the card says what they rest on', () => {
    const card = filled(prediction);
    const rows = card.tables[0]?.rows.map((row) => row.cells['coolant-out']?.expect?.text ?? null);
    expect(rows?.slice(0, 4)).toEqual(['84 ± 2', '91 ± 3', '95 ± 3', null]);
    expect(card.tables[0]?.columns.map((column) => column.expectsByRow)).toEqual([true, false, false, false]);
    expect(card.expectNote).toBe('Expect: runs 1 and 2, air 18 °C');
    expect(card.stop.band).toMatch(/outside the band twice/);
  });

  test('one value for all rows stands once, above them', () => {
    const quantities = [
      { name: 'bus-current', unit: 'A', value: 14, low: 12, high: 16, conditions: {}, why: 'load survey' },
    ];
    const card = filled({ ...prediction, tables: [], quantities });
    const columns = card.tables[0]?.columns ?? [];
    const amps = columns.find((column) => column.label === 'bus amps');
    // the channel of the card has an index, the prediction has none
    expect(amps?.quantity).toBe('bus-current#1');
    expect(amps?.expect?.text ?? null).toBe('14 ± 2');
  });

  test('a refused prediction is a first measurement', () => {
    const card = filled({ ...prediction, status: 'refused', reason: 'outside what was flown' });
    expect(card.expectNote).toMatch(/no prediction, first measurement/);
    expect(card.stop.band).toBe('');
  });
});
