import { describe, expect, it } from 'vitest';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { resultSchema } from '../../../../analysis/results/index.ts';
import { plainAirplane } from '../../../blind/plain-airplane.ts';
import {
  cardPoints,
  cells,
  EXPONENTS,
  exactAirplane,
  excess,
  exponent,
  flagsOf,
  predict,
  reduce,
  SETTINGS,
} from './card.ts';

const airplane = exactAirplane();
const found = reduce({ points: cardPoints(SETTINGS), airplane });

describe('points of a known law, written on a card', () => {
  it('gives its exponents to the digits of the air-data relations, and residuals of nothing', () => {
    expect(found.status).toBe('reduced');
    expect(resultSchema.safeParse(JSON.parse(JSON.stringify(found))).success).toBe(true);
    expect(exponent(found, 'fuel-flow')?.value).toBeCloseTo(EXPONENTS.flow, 8);
    expect(exponent(found, 'dynamic-pressure')?.value).toBeCloseTo(EXPONENTS.pressure, 8);
    expect(exponent(found, 'cowl-exit-position')?.value).toBeCloseTo(EXPONENTS.door, 8);
    for (const residual of cells(found, 'steady-points', 'residual'))
      expect(Math.abs(Number(residual))).toBeLessThan(1e-6);
  });

  it('margins are limit less temperature brought to the hot day, one to one', () => {
    // hot day at sea level: 100 F = 37.78 C, 12.78 K over the 25 C of the card; limit 112 C
    const margins = cells(found, 'margins', 'margin').map(Number);
    SETTINGS.forEach((one, i) => {
      expect(margins[i]).toBeCloseTo(112 - (25 + excess(one) + 340 / 9 - 25), 6);
    });
    const least = found.quantities.find((one) => one.name === 'hot-day-margin');
    expect(least?.value).toBeCloseTo(Math.min(...margins), 6);
    expect(least?.parts).toMatchObject({ repeatability: expect.any(Number), fit: expect.any(Number) });
  });

  it('says shown, not shown and exceeded where limit and doubt say so, and compares the worst point', () => {
    const [corrected, u95, outcomes] = ['corrected', 'u95', 'outcome'].map((name) => cells(found, 'margins', name));
    const limit = 112 + 273.15;
    outcomes?.forEach((outcome, i) => {
      const [value, half] = [Number(corrected?.[i]), Number(u95?.[i])];
      expect(outcome).toBe(value + half <= limit ? 'shown' : value - half > limit ? 'exceeded' : 'not shown');
    });
    expect(new Set(outcomes).size).toBe(3);
    expect(found.comparisons).toHaveLength(1);
    expect(found.comparisons[0]?.value).toBe(Math.max(...(corrected ?? []).map(Number)));
  });

  it('predicts inside what was flown and widens for one more point', () => {
    const at = { flow: 26, speed: 112, door: 45 };
    const answer = predict(found, {
      'fuel-flow': { value: at.flow, unit: 'L/h' },
      'calibrated-airspeed': { value: at.speed, unit: 'kt' },
      'cowl-exit-position': { value: at.door, unit: '%' },
      'outside-air-temperature': { value: 30, unit: 'degC' },
      'pressure-altitude': { value: 0, unit: 'ft' },
    });
    const [one] = answer.quantities;
    expect(answer.status).toBe('predicted');
    expect(one?.value).toBeCloseTo(273.15 + 30 + excess(at), 5);
    expect((one?.high ?? 0) - (one?.value ?? 0)).toBeGreaterThan(0.5);
  });

  it('refuses outside the hull with the distance and the nearest flown', () => {
    const asked = (flow: number, speed: number, door: number, more = {}) =>
      predict(found, {
        'fuel-flow': { value: flow, unit: 'L/h' },
        'calibrated-airspeed': { value: speed, unit: 'kt' },
        'cowl-exit-position': { value: door, unit: '%' },
        ...more,
      });
    const far = asked(48, 110, 50);
    expect(far.status).toBe('refused');
    expect(far.reason).toMatch(/fuel flow \+3\d %, nearest flown 3\d\.\d L\/h/);
    // inside each range, and in no mixture of the points: full power is never slow with the door shut
    expect(asked(36, 90, 22).status).toBe('refused');
    expect(asked(28, 110, 40).status).toBe('predicted');
    expect(asked(28, 110, 40, { 'pressure-altitude': { value: 6000, unit: 'ft' } }).reason).toContain('heights flown');
    expect(asked(28, 110, 40, { 'outside-air-temperature': { value: -20, unit: 'degC' } }).reason).toContain(
      'outside air',
    );
    expect(predict(found, { 'fuel-flow': { value: 28, unit: 'L/h' } }).reason).toContain('must be given');
  });

  it('says what one more point would bring, and it does', () => {
    const [after] = cells(found, 'next-segment', 'widest-prediction-then').map(Number);
    const [before] = cells(found, 'next-segment', 'widest-prediction-now').map(Number);
    expect(after).toBeLessThan(before ?? 0);
    expect(flagsOf(found, 'method-note').some((one) => one.includes('; one more point at fuel flow'))).toBe(true);
  });
});

describe('what was not varied has no exponent', () => {
  it('door in one place: dropped, named, and the others as they are', () => {
    const result = reduce({ points: cardPoints(SETTINGS.map((one) => ({ ...one, door: 50 }))), airplane });
    expect(exponent(result, 'cowl-exit-position')).toBeUndefined();
    expect(flagsOf(result, 'not-resolved')[0]).toContain('door was not varied');
    expect(exponent(result, 'fuel-flow')?.value).toBeCloseTo(EXPONENTS.flow, 8);
    // the door of the points is part of the condition all the same
    const answer = predict(result, {
      'fuel-flow': { value: 28, unit: 'L/h' },
      'calibrated-airspeed': { value: 110, unit: 'kt' },
      'cowl-exit-position': { value: 90, unit: '%' },
    });
    expect(answer.reason).toContain('door +');
  });

  it('speed that followed power at every point shares its exponent, which is said', () => {
    const tied = SETTINGS.map((one) => ({ ...one, speed: 110 * Math.sqrt(one.flow / 28) }));
    const result = reduce({ points: cardPoints(tied), airplane });
    expect(flagsOf(result, 'not-resolved')[0]).toContain('dynamic pressure went with fuel flow');
    // q goes with fuel flow itself: one exponent for both
    expect(exponent(result, 'fuel-flow')?.value).toBeCloseTo(EXPONENTS.flow + EXPONENTS.pressure, 6);
  });

  it('fewer than three points an exponent: none is given, and how many are missing', () => {
    const result = reduce({ points: cardPoints(SETTINGS.slice(0, 7)), airplane });
    expect(result.tables.map((one) => one.name)).toEqual(['steady-points', 'margins']);
    expect(flagsOf(result, 'not-resolved')[0]).toMatch(/7 fully open points .* 9 are needed .* Fly 2 more/);
    expect(predict(result, {}).status).toBe('refused');
  });
});

describe('while something regulates there is no margin', () => {
  const high = exactAirplane({
    cooling: {
      ...plainAirplane.cooling,
      thermostatStart: { value: 90, unit: 'degC' },
      thermostatOpen: { value: 140, unit: 'degC' },
    },
  });

  it('the share still shut and the door’s travel left are given instead', () => {
    const result = reduce({ points: cardPoints(SETTINGS), airplane: high });
    expect(result.status).toBe('reduced');
    expect(cells(result, 'margins', 'margin').every((one) => one === null)).toBe(true);
    const [margin] = result.quantities;
    expect(margin).toMatchObject({ name: 'hot-day-margin', value: null, u95: null });
    expect(margin?.flags[0]?.kind).toBe('regulated');
    expect(margin?.flags[0]?.message).toMatch(/% of the thermostat’s range and 20 % of the door’s travel/);
    expect(result.comparisons.every((one) => one.outcome === 'not shown')).toBe(true);
    const shares = cells(result, 'steady-points', 'thermostat-share-shut').map(Number);
    const first = 25 + excess(SETTINGS[0] ?? { flow: 28, speed: 110, door: 50 });
    expect(shares[0]).toBeCloseTo(Math.min(1, (140 - first) / 50), 6);
  });

  it('a thermostat nobody described leaves the regime open: no margin, no exponents, and what to answer', () => {
    const { thermostatStart: _, thermostatOpen: __, ...cooling } = plainAirplane.cooling;
    const result = reduce({ points: cardPoints(SETTINGS), airplane: exactAirplane({ cooling }) });
    expect(flagsOf(result, 'regime-unknown')[0]).toContain('option thermostat');
    expect(cells(result, 'margins', 'margin').every((one) => one === null)).toBe(true);
    const told = reduce({
      points: cardPoints(SETTINGS),
      airplane: exactAirplane({ cooling }),
      options: { thermostat: 'none' },
    });
    expect(exponent(told, 'fuel-flow')?.value).toBeCloseTo(EXPONENTS.flow, 8);
  });

  it('oil: margins stand on the hot side, exponents only once its own thermostat is told', () => {
    const points = cardPoints(SETTINGS, 'oil-temperature');
    const unknown = reduce({ points, airplane });
    expect(flagsOf(unknown, 'regime-unknown')[0]).toContain('oilThermostat');
    expect(cells(unknown, 'margins', 'margin').every((one) => typeof one === 'number')).toBe(true);
    expect(exponent(unknown, 'fuel-flow')).toBeUndefined();
    const told = reduce({ points, airplane, options: { oilThermostat: 'none' } });
    expect(exponent(told, 'fuel-flow')?.value).toBeCloseTo(EXPONENTS.flow, 8);
  });

  it('points just over the opening stay out of the fit: only the hotter ones of their kind show', () => {
    const open = 88;
    const near = exactAirplane({
      cooling: {
        ...plainAirplane.cooling,
        thermostatStart: { value: 70, unit: 'degC' },
        thermostatOpen: { value: open, unit: 'degC' },
      },
    });
    const more = [1.3, -1.3].flatMap((error) =>
      SETTINGS.map((one) => ({ ...one, door: one.door * (1 + error / 10), error })),
    );
    const result = reduce({ points: cardPoints(more), airplane: near });
    expect(flagsOf(result, 'excluded').some((one) => one.includes('so near to fully open'))).toBe(true);
  });
});

describe('margins at conditions asked for', () => {
  const conditions = [
    {
      label: 'climb out',
      'fuel-flow': { value: 34, unit: 'L/h' },
      'calibrated-airspeed': { value: 112, unit: 'kt' },
      'cowl-exit-position': { value: 50, unit: '%' },
      'pressure-altitude': { value: 0, unit: 'ft' },
    },
    {
      'fuel-flow': { value: 60, unit: 'L/h' },
      'calibrated-airspeed': { value: 112, unit: 'kt' },
      'cowl-exit-position': { value: 50, unit: '%' },
    },
  ];
  const result = reduce({ points: cardPoints(SETTINGS), airplane, options: { conditions } });

  it('stand in the table on the hot day; one outside what was flown says how far', () => {
    const labels = cells(result, 'margins', 'label');
    const at = labels.indexOf('climb out');
    const margin = Number(cells(result, 'margins', 'margin')[at]);
    expect(margin).toBeCloseTo(112 - 340 / 9 - excess({ flow: 34, speed: 112, door: 50 }), 5);
    expect(cells(result, 'margins', 'margin')[labels.indexOf('condition 2')]).toBeNull();
    expect(flagsOf(result, 'extrapolated')[0]).toContain('nearest flown');
  });
});

describe('figures that cannot be used', () => {
  it('are a problem with the field named', () => {
    const [point] = cardPoints(SETTINGS).points;
    const broken = (change: Record<string, unknown>) => ({ kind: 'cooling-flight', points: [{ ...point, ...change }] });
    expect(() => reduce({ points: broken({ 'fuel-flow': { value: 20, unit: 'kt' } }) })).toThrow(InputProblem);
    expect(() => reduce({ points: broken({ 'fuel-flow': { value: 20, unit: 'kt' } }) })).toThrow(/fuel-flow/);
    expect(() => reduce({ points: broken({ 'gear-position': 1 }) })).toThrow(/gear-position/);
    expect(() => reduce({ points: { kind: 'cooling-flight', points: [{ label: 'x' }] } })).toThrow(/temperature/);
    expect(() => reduce({ options: { hotday: 'x' } })).toThrow(InputProblem);
  });

  it('nothing at all, and points without outside air, are refused', () => {
    expect(reduce({}).code).toBe('too-few-points');
    const bare = cardPoints(SETTINGS.slice(0, 2)).points.map(({ 'outside-air-temperature': _, ...rest }) => rest);
    const refused = reduce({ points: { kind: 'cooling-flight', points: bare }, airplane });
    expect(refused.code).toBe('missing-channel');
    const stated = { airTemperature: { value: 25, unit: 'degC' } };
    expect(reduce({ points: { kind: 'cooling-flight', points: bare }, airplane, options: stated }).status).toBe(
      'reduced',
    );
  });

  it('an airplane without limits gets temperatures and no margins', () => {
    const { coolant: _, ...limits } = plainAirplane.limits;
    const result = reduce({ points: cardPoints(SETTINGS), airplane: exactAirplane({ limits }) });
    expect(flagsOf(result, 'limit-missing')[0]).toContain('limits.coolant.limit');
    expect(result.comparisons).toEqual([]);
  });
});

describe('air-cooled, no fuel flow', () => {
  it('each head by itself, power as manifold pressure times engine speed', () => {
    const points = SETTINGS.map((one) => {
      const { 'fuel-flow': _, 'oil-temperature': __, ...rest } = cardPoints([one], 'oil-temperature').points[0] ?? {};
      return {
        ...rest,
        'manifold-pressure': { value: one.flow, unit: 'inHg' },
        'engine-speed': { value: 2400, unit: 'rpm' },
        'cylinder-head-temperature#1': { value: 25 + 2 * excess(one), unit: 'degC' },
        'cylinder-head-temperature#2': { value: 25 + 1.9 * excess(one), unit: 'degC' },
      };
    });
    const result = reduce({ points: { kind: 'cooling-flight', points }, airplane });
    const values = result.quantities.filter((one) => one.name === 'manifold-times-speed-exponent');
    expect(values).toHaveLength(2);
    for (const { value } of values) expect(value).toBeCloseTo(EXPONENTS.flow, 8);
  });
});
