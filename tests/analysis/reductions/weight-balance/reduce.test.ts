/** Weight and balance from written figures: the whole way, with what is assumed, left out and refused. */
import { describe, expect, it } from 'vitest';
import { weightBalance } from '../../../../analysis/reductions/weight-balance/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { resultSchema } from '../../../../analysis/results/index.ts';
import { toSi } from '../../../../analysis/units/index.ts';
import { demo } from '../../demo-airplanes.ts';

const ouzel = demo('ouzel');
const kg = (value: number) => ({ value, unit: 'kg' });
const m = (value: number) => ({ value, unit: 'm' });

/** Three runs of a known airplane: 742 kg with its centre of gravity at 2.34 m, nose wheel at 1.1 m, mains at 2.7 m. */
function runs(offsets: readonly number[] = [0, 0.2, -0.2]) {
  const nose = (742 * (2.7 - 2.34)) / 1.6;
  return offsets.flatMap((offset, i) => [
    { role: 'weighing', run: i + 1, place: 'nose', reading: kg(nose + offset), arm: m(1.1) },
    { role: 'weighing', run: i + 1, place: 'left', reading: kg((742 - nose) / 2 + offset), arm: m(2.7) },
    { role: 'weighing', run: i + 1, place: 'right', reading: kg((742 - nose) / 2 - offset), arm: m(2.7) },
  ]);
}

const reduce = (points: unknown[], options: Record<string, unknown> = {}, airplane = ouzel) =>
  weightBalance.reduce({ points: { kind: 'weight-balance', points }, options, airplane, configurationRevision: 3 });

const stated = { scaleU95: kg(0.4), armU95: { value: 2, unit: 'mm' }, levelU95: { value: 0.2, unit: 'deg' } };

describe('a weighing', () => {
  it('finds the airplane, inside its stated interval', () => {
    const result = resultSchema.parse(reduce(runs(), stated));
    const [mass, arm, share] = result.quantities;
    expect(result.status).toBe('reduced');
    expect(Math.abs((mass?.value ?? 0) - 742)).toBeLessThanOrEqual(mass?.u95 ?? 0);
    expect(Math.abs((arm?.value ?? 0) - 2.34)).toBeLessThanOrEqual(arm?.u95 ?? 0);
    expect(share?.value).toBeCloseTo((2.34 - 2.05) / 1.4, 3);
    expect(result.tables.map((table) => table.name)).toEqual(['wheels', 'runs', 'load-cases', 'items']);
    expect(result.provenance).toMatchObject({ configurationRevision: 3, methodVersion: '1.0' });
  });

  it('flags what was assumed, and a lone run', () => {
    const kinds = reduce(runs([0])).flags.map((one) => one.kind);
    expect(kinds).toContain('assumed-repeatability');
    expect(kinds.filter((kind) => kind === 'assumed-calibration').length).toBeGreaterThanOrEqual(3);
    expect(reduce(runs(), stated).flags.map((one) => one.kind)).not.toContain('assumed-repeatability');
  });

  it('leaves out a run that lacks a wheel, and says so', () => {
    const result = reduce(runs().slice(0, -1), stated);
    expect(result.flags.map((one) => one.kind)).toContain('excluded');
    expect(result.tables.find((table) => table.name === 'runs')?.rows).toHaveLength(2);
  });

  it('takes off what was aboard and adds what was missing', () => {
    const with20L = [...runs(), { role: 'aboard', name: 'fuel', volume: { value: 20, unit: 'L' }, arm: m(2.35) }];
    const plain = reduce(runs(), stated).quantities[0]?.value ?? 0;
    const less = reduce(with20L, stated).quantities[0]?.value ?? 0;
    // 20 L at 6 lb per US gallon
    expect(plain - less).toBeCloseTo(20 * toSi(6, 'lb/gal') * toSi(1, 'L'), 9);
    const more = reduce([...runs(), { role: 'missing', name: 'spats', mass: kg(4), arm: m(2.4) }], stated);
    expect((more.quantities[0]?.value ?? 0) - plain).toBeCloseTo(4, 9);
  });
});

describe('load cases', () => {
  it('are two of the description where the card has none', () => {
    const table = reduce([]).tables.find((one) => one.name === 'load-cases');
    expect(table?.rows.map((row) => row[0])).toEqual(['pilot, tanks full', 'pilot, no usable fuel']);
  });

  it('are compared with the maximum and both limits, three ways', () => {
    const heavy = ['left seat', 'right seat'].map((station) => ({
      role: 'load',
      case: 'full',
      station,
      mass: kg(110),
    }));
    const fuel = { role: 'load', case: 'full', station: 'left', volume: { value: 50, unit: 'L' } };
    const result = reduce([...heavy, fuel]);
    expect(result.comparisons.map((one) => [one.what, one.outcome])).toEqual([
      ['full: mass', 'shown'],
      ['full: forward limit', 'shown'],
      ['full: aft limit', 'shown'],
    ]);
    const aft = reduce([{ role: 'load', case: 'tail', station: 'tail ballast', mass: kg(60) }]);
    expect(aft.comparisons.find((one) => one.what === 'tail: aft limit')?.outcome).toBe('exceeded');
  });

  it('say what could not be placed', () => {
    const result = reduce([{ role: 'load', case: 'odd', station: 'roof rack', mass: kg(10) }]);
    expect(result.flags.find((one) => one.kind === 'excluded')?.message).toContain('roof rack has no arm');
  });

  it('say when there is no envelope', () => {
    const result = reduce([], {}, demo('ouzel', { loading: { envelope: [] } }));
    expect(result.flags.map((one) => one.kind)).toContain('comparison-missing');
    expect(result.comparisons.every((one) => one.what.endsWith('mass'))).toBe(true);
  });
});

describe('ballast', () => {
  const pilot = { role: 'load', case: 'aft test', station: 'left seat', mass: kg(78) };

  it('is rounded up to what is on hand and worked out again', () => {
    const result = reduce([pilot, { role: 'wanted', case: 'aft test', arm: m(2.44), station: 'tail ballast' }], {
      ballastStep: kg(1),
    });
    const [row] = result.tables.find((one) => one.name === 'ballast')?.rows ?? [];
    // 820 kg at 2.36: (2.44 - 2.36) / (6.1 - 2.44) x 820 = 17.9, so 18
    expect(row?.[3]).toBe(18);
    expect(row?.[5]).toBeGreaterThanOrEqual(2.44);
    expect(row?.[7]).toBe(true);
  });

  it('is refused at the wrong end, with the reason', () => {
    const result = reduce([pilot, { role: 'wanted', case: 'aft test', arm: m(2.44), station: 'nose ballast' }]);
    const [row] = result.tables.find((one) => one.name === 'ballast')?.rows ?? [];
    expect(row?.[3]).toBeNull();
    expect(row?.[8]).toContain('wrong end');
    expect(result.flags.map((one) => one.kind)).toContain('not-resolved');
  });
});

describe('bad input', () => {
  it('is refused with a reason', () => {
    const nothing = weightBalance.reduce({});
    expect(nothing).toMatchObject({ status: 'refused', code: 'missing-configuration' });
    const zero = reduce([{ role: 'weighing', run: 1, place: 'nose', reading: kg(0), arm: m(1) }]);
    expect(zero).toMatchObject({ status: 'refused', code: 'out-of-domain' });
  });

  it('names the field that does not fit', () => {
    const bad = () =>
      reduce([{ role: 'weighing', run: 1, place: 'nose', reading: { value: 1, unit: 'L' }, arm: m(1) }]);
    expect(bad).toThrow(InputProblem);
    expect(bad).toThrow(/points.0.reading.unit/);
  });
});
