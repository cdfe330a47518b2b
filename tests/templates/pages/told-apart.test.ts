/** Values of one name are told apart by what differs between them. */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAirplane } from '../../../analysis/airplane/index.ts';
import { type Condition, compareWithLimit, type Result, type ResultQuantity } from '../../../analysis/results/index.ts';
import { headlineOf } from '../../../templates/pages/result-headline.ts';
import { toldApart } from '../../../templates/pages/told-apart.ts';
import type { InstrumentUnits } from '../../../templates/words/unit-shown.ts';

const { airplane } = readAirplane(JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8')));
if (!airplane) throw new Error('the sample airplane is not read');
const units: InstrumentUnits = airplane.instruments.units;

const quantity = (conditions: Record<string, Condition>, value = 1.5): ResultQuantity => ({
  name: 'position-error',
  value,
  unit: 'm/s',
  u95: 0.4,
  parts: {},
  conditions,
  flags: [],
});
const speed = (value: number) => ({ value, unit: 'm/s' });

describe('values of one name', () => {
  it('are told apart by the first number that differs everywhere', () => {
    const said = toldApart(
      [33.4, 41.2].map((ias) =>
        quantity({ 'indicated-airspeed': speed(ias), flaps: 'up', mass: { value: 1063, unit: 'kg' } }),
      ),
      units,
    );
    expect(said).toEqual([
      { which: '', name: 'indicated airspeed', at: '64.9 kt' },
      { which: '', name: 'indicated airspeed', at: '80.1 kt' },
    ]);
  });

  it('by two conditions where none alone does, and by nothing where one stands alone', () => {
    const channel = (channel: string, climb: string) => quantity({ channel, climb, file: `${channel}.csv` });
    const said = toldApart(
      [
        channel('oil-temperature', 'first'),
        channel('oil-temperature', 'second'),
        channel('coolant-temperature', 'first'),
      ],
      units,
    );
    expect(said.map(({ which }) => which)).toEqual([
      'oil temperature, first',
      'oil temperature, second',
      'coolant temperature, first',
    ]);
    expect(toldApart([quantity({ mass: { value: 1, unit: 'kg' } })], units)).toEqual([{ which: '', name: '', at: '' }]);
  });

  it('by the name of a row before any number', () => {
    const said = toldApart(
      [0, 1, 2].map((i) =>
        quantity({
          'outside-air-temperature': { value: 293 + i, unit: 'K' },
          segment: i === 0 ? '2500 rpm, fan on' : '2500 rpm, fan off',
        }),
      ),
      units,
    );
    expect(said.map(({ which }) => which)).toEqual(['2500 rpm, fan on', '2500 rpm, fan off', '2500 rpm, fan off']);
    expect(said.every(({ at }) => at === '')).toBe(true);
  });
});

describe('the headline of a result', () => {
  const comparison = (limit: number, reference?: true) =>
    compareWithLimit({ what: 'it', value: 2, u95: 0.1, limit, unit: 'm/s', ...(reference ? { reference } : {}) });
  const result = (comparisons: Result['comparisons']): Result => ({
    kind: 'airspeed',
    status: 'reduced',
    quantities: [33.4, 41.2].map((ias) => quantity({ 'indicated-airspeed': speed(ias) })),
    tables: [],
    segments: [],
    comparisons,
    flags: [],
    provenance: { files: [], configurationRevision: null, methodVersion: '1' },
  });

  it('is no yardstick that does not bind the airplane', () => {
    const said = headlineOf(result([comparison(1, true)]), units, '#numbers');
    expect(said.comparison).toBeNull();
    expect(said.label).toBe('Position error, indicated airspeed 64.9 kt');
  });

  it('is a limit of the airplane before any number', () => {
    expect(headlineOf(result([comparison(1, true), comparison(5)]), units, '#numbers').comparison?.outcome).toBe(
      'shown',
    );
  });
});
