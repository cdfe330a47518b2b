/** The catalogue as a whole: complete, sound in its references, and honest about its sources. */
import { describe, expect, it } from 'vitest';
import {
  applicable,
  CATALOGUE,
  CITATIONS,
  REFERENCES,
  REPEAT_AFTER_CHANGE,
  referenceOf,
  referencesOf,
  STAGES,
  testOf,
} from '../../../analysis/catalogue/index.ts';
import { quantityOf } from '../../../analysis/units/index.ts';
import { demo } from '../demo-airplanes.ts';

const COUNTS = {
  shop: 41,
  'engine-ground': 18,
  taxi: 4,
  'first-flight': 6,
  envelope: 24,
  'systems-flight': 24,
  performance: 10,
  handling: 14,
  'sign-off': 8,
};

describe('the catalogue', () => {
  it('holds 149 tests with names of their own, by stage as designed', () => {
    expect(CATALOGUE).toHaveLength(149);
    expect(new Set(CATALOGUE.map((test) => test.id)).size).toBe(149);
    const counts = Object.fromEntries(
      STAGES.map((stage) => [stage, CATALOGUE.filter((one) => one.stage === stage).length]),
    );
    expect(counts).toEqual(COUNTS);
  });

  it('has 39.6 h on condition and about 269 h on the ground in all', () => {
    const hours = (key: 'flightMinutes' | 'groundMinutes') => CATALOGUE.reduce((sum, test) => sum + test[key], 0) / 60;
    expect(hours('flightMinutes')).toBeCloseTo(39.6, 1);
    expect(hours('groundMinutes')).toBeCloseTo(269, 0);
  });

  it('needs only tests that exist and stand in the same or an earlier stage', () => {
    const wrong = CATALOGUE.flatMap((test) =>
      test.needs.flatMap((need) => {
        const before = testOf(need);
        const late = before && STAGES.indexOf(before.stage) > STAGES.indexOf(test.stage);
        return !before || late || need === test.id ? [`${test.id} needs ${need}`] : [];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('uses only products that one test makes, in the same or an earlier stage', () => {
    const makers = new Map<string, string[]>();
    for (const test of CATALOGUE)
      for (const product of test.produces) makers.set(product, [...(makers.get(product) ?? []), test.id]);
    expect([...makers].filter(([, by]) => by.length > 1)).toEqual([]);
    const wrong = CATALOGUE.flatMap((test) =>
      test.consumes.flatMap((product) => {
        const maker = testOf(makers.get(product)?.[0] ?? '');
        const late = maker && STAGES.indexOf(maker.stage) > STAGES.indexOf(test.stage);
        return !maker || late ? [`${test.id} uses ${product}`] : [];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('has no circle of needs and products', () => {
    const makers = new Map(CATALOGUE.flatMap((test) => test.produces.map((product) => [product, test.id] as const)));
    const left = new Map(
      CATALOGUE.map((test) => [
        test.id,
        new Set([...test.needs, ...test.consumes.flatMap((one) => makers.get(one) ?? [])]),
      ]),
    );
    for (let free = ['']; free.length > 0; ) {
      free = [...left].filter(([, waits]) => waits.size === 0).map(([id]) => id);
      for (const id of free) left.delete(id);
      for (const waits of left.values()) for (const id of free) waits.delete(id);
    }
    expect([...left.keys()]).toEqual([]);
  });

  it('names only numbers of the list, and every number of the list is named', () => {
    const used = new Set(CATALOGUE.flatMap(referencesOf));
    expect([...used].filter((path) => referenceOf(path) === undefined)).toEqual([]);
    expect(REFERENCES.map((one) => one.path).filter((path) => !used.has(path))).toEqual([]);
  });

  it('writes each reference with the kind of its number', () => {
    const tokens = JSON.stringify(CATALOGUE).matchAll(/\{\{(\S+) ([^}\s]+)\}\}/g);
    const wrong = [...tokens].flatMap(([all, kind, path]) => (referenceOf(path ?? '')?.kind === kind ? [] : [all]));
    expect(wrong).toEqual([]);
  });

  it('reads only quantities of the glossary', () => {
    const names = CATALOGUE.flatMap((test) => [
      ...test.readings.flatMap((one) => one.quantity ?? []),
      ...test.channels.filter((name) => name !== 'all'),
    ]);
    expect([...new Set(names)].filter((name) => quantityOf(name) === undefined)).toEqual([]);
  });

  it('cites a source with its mark for every criterion, and cites each listed source somewhere', () => {
    const cited = new Set(CATALOGUE.flatMap((test) => [...test.pass.map((one) => one.source), ...test.sources]));
    expect(Object.keys(CITATIONS).filter((key) => !cited.has(key))).toEqual([]);
    expect(CATALOGUE.filter((test) => test.pass.length === 0)).toEqual([]);
  });

  it('repeats after a change only tests that exist', () => {
    expect(REPEAT_AFTER_CHANGE.flatMap((row) => row.repeat).filter((id) => testOf(id) === undefined)).toEqual([]);
  });

  it('puts something new into at most one place: each opens its own', () => {
    const opens = CATALOGUE.flatMap((test) => test.planning.opens ?? []);
    expect(new Set(opens).size).toBe(opens.length);
  });

  it('flies what is risky alone or as the one new thing', () => {
    const loose = CATALOGUE.filter((test) => test.planning.risk >= 4 && !test.planning.alone && !test.planning.opens);
    expect(loose.map((test) => test.id)).toEqual([]);
  });
});

describe('which tests apply', () => {
  const applying = (airplane: ReturnType<typeof demo>) =>
    CATALOGUE.filter((test) => applicable(test, airplane).applies).length;

  it('keeps 145 for the complex airplane of the design: spins, aerobatics and smoke off', () => {
    expect(applying(demo('ouzel', { plan: { ifr: true } }))).toBe(145);
  });

  it('keeps 142 for Ouzel as described: no instrument flight, so no receivers, coupled approach or night check', () => {
    const ouzel = demo('ouzel');
    const gone = CATALOGUE.filter((test) => !applicable(test, ouzel).applies).map((test) => test.id);
    expect(gone.sort()).toEqual([
      'aerobatic-buildup',
      'autopilot-coupled-approach',
      'nav-accuracy-flight',
      'night-ifr-equipment-check',
      'smoke-system-flight',
      'smoke-system-ground',
      'spin-recovery',
    ]);
  });

  it('keeps 104 for Wrenlet', () => {
    expect(applying(demo('wrenlet'))).toBe(104);
  });

  it('says why, with the field that decides', () => {
    const test = testOf('ground-cooling-fan-hold');
    if (!test) throw new Error('no such test');
    expect(applicable(test, demo('ouzel'))).toEqual({
      applies: true,
      because: 'It is in because the airplane has a ground cooling fan (cooling.groundFan).',
      paths: ['cooling.groundFan'],
    });
    expect(applicable(test, demo('wrenlet')).because).toBe(
      'It does not apply because the airplane has no ground cooling fan (cooling.groundFan).',
    );
  });
});
