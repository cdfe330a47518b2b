/** The worked example of the note, by the code that pages and results use. */
import { describe, expect, it } from 'vitest';
import { reductionOf } from '../../../../analysis/reductions/index.ts';
import { SOURCES } from '../../../../analysis/sources.ts';
import { fromSi, toSi } from '../../../../analysis/units/index.ts';
import { cells, exactAirplane, exponent, predict, reduce } from './card.ts';

const note = reductionOf('cooling-flight')?.note;
const example = note?.workedExample.lines.join(' ') ?? '';

describe('worked example of flight cooling', () => {
  const points = [
    [20, 60],
    [24, 66],
    [28.8, 72.6],
  ].map(([flow, over]) => ({
    'fuel-flow': { value: flow, unit: 'L/h' },
    'calibrated-airspeed': { value: 110, unit: 'kt' },
    'cowl-exit-position': { value: 50, unit: '%' },
    'pressure-altitude': { value: 3000, unit: 'ft' },
    'outside-air-temperature': { value: 12, unit: 'degC' },
    'coolant-temperature': { value: 12 + (over ?? 0), unit: 'degC' },
  }));
  const conditions = [
    {
      label: 'asked',
      'fuel-flow': { value: 26, unit: 'L/h' },
      'calibrated-airspeed': { value: 110, unit: 'kt' },
      'pressure-altitude': { value: 3000, unit: 'ft' },
    },
  ];
  const result = reduce({
    points: { kind: 'cooling-flight', points },
    airplane: exactAirplane(),
    options: { conditions },
  });

  it('exponent, excess and temperature', () => {
    expect(exponent(result, 'fuel-flow')?.value).toBeCloseTo(0.523, 3);
    expect(example).toContain('= 0.523');
    const { label: _, ...asked } = conditions[0] ?? { label: '' };
    const answer = predict(result, {
      ...asked,
      'outside-air-temperature': { value: 12, unit: 'degC' },
    });
    expect(fromSi(answer.quantities[0]?.value ?? 0, 'degC')).toBeCloseTo(80.8, 1);
    expect(example).toContain('80.8 °C');
  });

  it('hot day and margin', () => {
    const at = cells(result, 'margins', 'label').indexOf('asked');
    expect(fromSi(Number(cells(result, 'margins', 'hot-air')[at]), 'degC')).toBeCloseTo(31.8, 1);
    expect(fromSi(Number(cells(result, 'margins', 'corrected')[at]), 'degC')).toBeCloseTo(100.6, 1);
    expect(Number(cells(result, 'margins', 'margin')[at])).toBeCloseTo(11.4, 1);
    expect(example).toContain('margin 11.4 K');
    expect(0.02 * toSi(68.8, 'dK')).toBeCloseTo(1.4, 1);
  });

  it('every source of the note is in the list', () => {
    const keys = SOURCES.map((one) => one.key);
    for (const key of note?.sources ?? []) expect(keys).toContain(key);
    for (const { source } of note?.formulas ?? []) expect(note?.sources).toContain(source);
  });
});
