/** Units: exact definitions, round trips, differences, spellings. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  differenceFromSi,
  differenceToSi,
  fromSi,
  QUANTITIES,
  quantityOf,
  siUnitFor,
  siUnitOf,
  toSi,
  UNITS,
  unitOf,
  unitsOf,
  unitsSpelt,
} from '../../../analysis/units/index.ts';

describe('NIST Special Publication 811, appendix B (from memory): exact factors', () => {
  // [one unit, its SI value]; exact by definition, so the tolerance is rounding of doubles
  const exact: [string, number][] = [
    ['ft', 0.3048],
    ['in', 0.0254],
    ['nmi', 1852],
    ['mi', 1609.344],
    ['lb', 0.45359237],
    ['gal', 3.785411784e-3],
    ['impgal', 4.54609e-3],
    ['g0', 9.80665],
    ['lbf', 4.4482216152605],
    ['ppm', 1e-6],
  ];
  it.each(exact)('one %s', (unit, si) => {
    expect(Math.abs(toSi(1, unit) / si - 1)).toBeLessThan(1e-14);
  });

  // derived and rounded in the table: relative tolerance is the last printed digit
  const printed: [string, number, number][] = [
    ['kt', 0.5144444, 1e-7],
    ['psi', 6894.757, 1e-7],
    ['inHg', 3386.389, 1e-9],
    ['hp', 745.6999, 1e-7],
    ['ft/min', 5.08e-3, 1e-12],
    ['lbf.ft', 1.355818, 1e-6],
  ];
  it.each(printed)('one %s', (unit, si, relative) => {
    expect(Math.abs(toSi(1, unit) / si - 1)).toBeLessThan(relative);
  });

  it('puts the ice and steam points on both scales', () => {
    expect(toSi(0, 'degC')).toBeCloseTo(273.15, 10);
    expect(toSi(32, 'degF')).toBeCloseTo(273.15, 10);
    expect(toSi(212, 'degF')).toBeCloseTo(373.15, 10);
    expect(fromSi(233.15, 'degF')).toBeCloseTo(-40, 10);
  });
});

describe('conversion', () => {
  it('comes back from SI for every unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS.map((unit) => unit.id)),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (unit, value) => {
          expect(Math.abs(fromSi(toSi(value, unit), unit) - value)).toBeLessThanOrEqual(
            1e-9 * (1 + Math.abs(value)) + 1e-6 / unitOf(unit).factor / 1e9,
          );
        },
      ),
    );
  });

  it('leaves the zero of a scale out of differences', () => {
    expect(differenceToSi(9, 'degF')).toBeCloseTo(5, 12);
    expect(differenceFromSi(5, 'degF')).toBeCloseTo(9, 12);
    expect(differenceToSi(5, 'degC')).toBe(5);
  });

  it('has one SI unit in each dimension, with factor one', () => {
    for (const dimension of new Set(UNITS.map((unit) => unit.dimension))) {
      const si = siUnitOf(dimension);
      expect([si.factor, si.offset]).toEqual([1, 0]);
      expect(unitsOf(dimension).filter((unit) => unit.si)).toHaveLength(1);
    }
    expect(siUnitFor('psi')).toBe('Pa');
  });

  it('refuses a unit it does not know', () => {
    expect(() => toSi(1, 'furlong')).toThrow(/unknown unit "furlong"/);
  });

  it('reads spellings, and says when one may mean several units', () => {
    expect(unitsSpelt(' Deg  F ').map((unit) => unit.id)).toEqual(['degF']);
    expect(unitsSpelt('KTS').map((unit) => unit.id)).toEqual(['kt']);
    expect(unitsSpelt('g').map((unit) => unit.id)).toEqual(['g', 'g0']);
    expect(unitsSpelt('parsec')).toEqual([]);
  });
});

describe('glossary', () => {
  it('names each quantity once, with trade units of its dimension and a range that holds something', () => {
    expect(new Set(QUANTITIES.map((one) => one.name)).size).toBe(QUANTITIES.length);
    for (const one of QUANTITIES) {
      for (const unit of one.tradeUnits) expect(unitOf(unit).dimension, `${one.name} in ${unit}`).toBe(one.dimension);
      expect(one.plausible[0]).toBeLessThan(one.plausible[1]);
      expect(one.meaning).toMatch(/\.$/);
    }
  });

  it('finds an indexed channel by its base name', () => {
    expect(quantityOf('cylinder-head-temperature#3')?.symbol).toBe('CHT');
    expect(quantityOf('humour')).toBeUndefined();
  });
});
