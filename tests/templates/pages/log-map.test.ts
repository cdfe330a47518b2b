import { describe, expect, it } from 'vitest';
import { mapSchema } from '../../../analysis/logs/log-map.ts';
import { quantityChoices, readLogMap, unitChoices } from '../../../templates/pages/log-map.ts';
import { qualityMarks } from '../../../templates/pages/quality-strip.ts';
import { readSegments } from '../../../templates/pages/segments-form.ts';

const form = (fields: Record<string, string>) =>
  new Map(Object.entries(fields).map(([name, value]) => [name, [value]]));

describe('a posted channel table', () => {
  it('is a map that the reader takes', () => {
    const map = readLogMap(
      form({
        'column.0.name': 'CLT [C]',
        'column.0.quantity': 'coolant-temperature',
        'column.0.unit': 'degC',
        'column.1.name': 'spare',
        'column.1.quantity': 'ignore',
        'column.1.unit': 'V',
        'column.2.name': 'odd',
        'column.2.quantity': '',
        'column.2.unit': '',
        offset: '+01:00',
        dayFirst: 'no',
        decimal: ',',
        timeColumns: 'Date, Time',
      }),
    );
    expect(map).toEqual({
      columns: { 'CLT [C]': { quantity: 'coolant-temperature', unit: 'degC' }, spare: { quantity: 'ignore' } },
      time: { offset: '+01:00', dayFirst: false, columns: ['Date', 'Time'] },
      decimal: ',',
    });
    expect(mapSchema.safeParse(map).success).toBe(true);
  });

  it('says that the figures of a date begin with the year', () => {
    const map = readLogMap(form({ dayFirst: 'year' }));
    expect(map).toEqual({ columns: {}, time: { format: 'yymmdd' } });
    expect(mapSchema.safeParse(map).success).toBe(true);
  });

  it('with a hostile column name is only a name', () => {
    const map = readLogMap(
      form({ 'column.0.name': '__proto__', 'column.0.quantity': 'engine-speed', 'column.0.unit': 'rpm' }),
    );
    expect(Object.keys(map.columns)).toEqual([]);
    expect(({} as Record<string, unknown>).quantity).toBeUndefined();
  });
});

describe('choices of a column', () => {
  const channel = {
    column: 'T1',
    index: 0,
    name: 'T1',
    quantity: null,
    unit: null,
    confidence: 0.3,
    why: '',
    values: new Float64Array(0),
    valid: 1,
    flags: [],
  };
  const question = {
    id: 'quantity:T1',
    question: '',
    choices: ['oil-temperature', 'coolant-temperature', 'ignore'],
    because: '',
    concerns: [],
  };

  it('begin with what was asked, and hold every quantity once', () => {
    const groups = quantityChoices(channel, question, '');
    expect(groups[1]?.options.map((one) => one.value)).toEqual(['oil-temperature', 'coolant-temperature']);
    const values = groups.flatMap((one) => one.options.map((option) => option.value));
    expect(new Set(values).size).toBe(values.length);
    expect(groups[0]?.options[0]?.selected).toBe(true);
  });

  it('of a unit begin with those of its quantity', () => {
    const groups = unitChoices('coolant-temperature', undefined, 'degF');
    expect(groups[1]?.options.map((one) => one.value)).toEqual(['K', 'degC', 'degF']);
    expect(
      groups
        .flatMap((one) => one.options)
        .filter((one) => one.selected)
        .map((one) => one.value),
    ).toEqual(['degF']);
  });
});

describe('the quality strip', () => {
  it('shows a remark where it holds, never thinner than can be seen', () => {
    const flags = [
      { kind: 'stuck' as const, message: 'stood still', fromSeconds: 250, toSeconds: 500 },
      { kind: 'gap' as const, message: 'missing', fromSeconds: 1000, toSeconds: 1000 },
      { kind: 'unit-not-stated' as const, message: 'no span' },
    ];
    expect(qualityMarks({ flags }, { durationSeconds: 1000 })).toEqual([
      { x: '0.2500', width: '0.2500', light: false, title: 'stood still' },
      { x: '0.9970', width: '0.0030', light: true, title: 'missing' },
    ]);
    expect(qualityMarks({ flags }, { durationSeconds: 0 })).toEqual([]);
  });
});

describe('segments as typed', () => {
  const row = (i: number, from: string, to: string, use = 'yes') => ({
    [`segments.${i}.fromSeconds`]: from,
    [`segments.${i}.toSeconds`]: to,
    [`segments.${i}.role`]: 'hold',
    [`segments.${i}.label`]: '',
    [`segments.${i}.file`]: 'a.csv',
    ...(use === '' ? {} : { [`segments.${i}.use`]: use }),
  });

  it('are those in use, each with the reason', () => {
    const read = readSegments(
      form({ ...row(0, '10', '20'), ...row(1, '30', '40', ''), ...row(2, '50,5', '60'), reason: 'the door moved' }),
    );
    expect(read.problems).toEqual([]);
    expect(read.segments).toEqual([
      { file: 'a.csv', fromSeconds: 10, toSeconds: 20, role: 'hold', reason: 'the door moved' },
      { file: 'a.csv', fromSeconds: 50.5, toSeconds: 60, role: 'hold', reason: 'the door moved' },
    ]);
  });

  it('need a reason, an order and at least one', () => {
    expect(readSegments(form(row(0, '20', '10'))).problems.map((one) => one.message)).toEqual([
      'No reason is given.',
      'It ends before it starts.',
    ]);
    expect(readSegments(form({ ...row(0, '1', '2', ''), reason: 'x' })).problems[0]?.message).toBe(
      'No segment is in use.',
    );
  });
});
