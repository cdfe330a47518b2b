import { describe, expect, it } from 'vitest';
import { valueAt, withValue } from '../../../templates/words/json-path.ts';
import { count, listInWords, nameInWords } from '../../../templates/words/list.ts';
import { outcomeInWords } from '../../../templates/words/outcome.ts';
import { cellText, conditionsInWords, quantityInWords, quantityText } from '../../../templates/words/quantity.ts';
import { clockInWords, minutesInWords, momentInWords } from '../../../templates/words/time.ts';
import { typedNumber } from '../../../templates/words/typed-number.ts';
import { USUAL_UNITS, unitShown } from '../../../templates/words/unit-shown.ts';

describe('numbers in words', () => {
  it('carry value, U95 and the unit of the instruments', () => {
    const part = quantityInWords(371.25, 'K', { name: 'equilibrium', u95: 1.24 }, USUAL_UNITS);
    expect(quantityText(part)).toBe('98.1 ± 1.2 °C');
    const hot = quantityInWords(
      371.25,
      'K',
      { name: 'equilibrium', u95: 1.24 },
      { ...USUAL_UNITS, temperature: 'degF' },
    );
    expect(quantityText(hot)).toBe('208.6 ± 2.2 °F');
  });

  it('say why there is none', () => {
    const part = quantityInWords(null, 'K', { name: 'equilibrium', why: 'the run was too short' }, USUAL_UNITS);
    expect(part).toMatchObject({ none: true, number: 'the run was too short', unit: '' });
  });

  it.each([
    ['engine-speed', '1/s', 'rpm'],
    ['wind-speed', 'm/s', 'kt'],
    ['rate-standard', 'm/s', 'ft/min'],
    ['calibrated-airspeed', 'm/s', 'kt'],
    ['density-altitude', 'm', 'ft'],
    ['ground-roll', 'm', 'm'],
    ['change', 'dK', 'dC'],
    ['exit', '1', '%'],
    ['lift-to-drag', '1', '1'],
    ['time-to-limit', 's', 'min'],
    ['period', 's', 's'],
    ['oil-pressure', 'Pa', 'bar'],
  ])('%s in %s is shown in %s', (name, si, shown) => {
    expect(unitShown(name, si, USUAL_UNITS)).toBe(shown);
  });

  it('of a cell are plain: a dash for none, on and off for switches', () => {
    expect(cellText(null, 'K', 'air', USUAL_UNITS)).toBe('—');
    expect(cellText(true, 'none', 'fan', USUAL_UNITS)).toBe('on');
    expect(cellText(true, 'none', 'used', USUAL_UNITS)).toBe('yes');
    expect(cellText('ground-run-1.csv', 'none', 'log', USUAL_UNITS)).toBe('ground-run-1.csv');
    expect(cellText('set-by-hand', 'none', 'reason', USUAL_UNITS)).toBe('Set by hand');
    expect(cellText('not shown', 'none', 'outcome', USUAL_UNITS)).toBe('Not shown');
  });

  it('of conditions carry their unit', () => {
    expect(
      conditionsInWords({ 'engine-speed': { value: 41.6667, unit: '1/s' }, 'cooling-fan-state': true }, USUAL_UNITS),
    ).toEqual([
      { name: 'Engine speed', text: '2500 rpm' },
      { name: 'Cooling fan state', text: 'on' },
    ]);
  });
});

describe('a typed number', () => {
  it.each([
    ['98.5', 98.5],
    ['98,5', 98.5],
    ['−12', -12],
    ['1 180', 1180],
    ['1’180,5', 1180.5],
    ['.5', 0.5],
    ['12 kt', null],
    ['1,234,567', null],
    ['', null],
  ])('%s', (text, number) => {
    expect(typedNumber(text)).toBe(number);
  });
});

describe('times', () => {
  it('stand in the person’s zone with UTC beside', () => {
    expect(momentInWords('2031-05-04T22:30:00Z', 'Europe/Berlin')).toEqual({
      local: '5 May 2031, 00:30',
      utc: '4 May 2031, 22:30 UTC',
      iso: '2031-05-04T22:30:00.000Z',
    });
    expect(momentInWords('not a time', 'UTC').local).toBe('time not known');
  });

  it('of a log are minutes and seconds', () => {
    expect([0, 59.6, 3671, -5].map(clockInWords)).toEqual(['0:00', '1:00', '1:01:11', '−0:05']);
    expect([20, 89, 90, 125].map(minutesInWords)).toEqual(['20 min', '89 min', '1 h 30 min', '2 h 5 min']);
  });
});

describe('plain words', () => {
  it('name things', () => {
    expect(nameInWords('cylinder-head-temperature#3')).toBe('Cylinder head temperature 3');
    expect(nameInWords('distance-to-15m')).toBe('Distance to 15 m');
    expect(listInWords(['a', 'b', 'c'])).toBe('a, b and c');
    expect(count(1, 'test')).toBe('1 test');
  });

  it('of outcomes differ in shape and weight, not only in word', () => {
    const looks = ['shown', 'not shown', 'exceeded'].map((word) => {
      const { word: _, ...look } = outcomeInWords(word);
      return JSON.stringify(look);
    });
    expect(new Set(looks).size).toBe(3);
  });
});

describe('paths into a description', () => {
  const json = { fuel: { tanks: [{ name: 'left' }, { name: 'right' }] } };
  it('are read and changed in a copy', () => {
    expect(valueAt(json, 'fuel.tanks.1.name')).toBe('right');
    expect(valueAt(json, 'fuel.pumps.1')).toBeUndefined();
    expect(withValue(json, 'fuel.tanks.0', undefined)).toEqual({ fuel: { tanks: [{ name: 'right' }] } });
    expect(json.fuel.tanks).toHaveLength(2);
  });

  it('never reach a prototype', () => {
    withValue({}, '__proto__.polluted', 1);
    withValue({}, 'constructor.prototype.polluted', 1);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
