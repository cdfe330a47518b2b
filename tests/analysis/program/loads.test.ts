/** Loading and fuel of flights: moments worked by hand, and honest words where a load cannot be reached. */
import { describe, expect, it } from 'vitest';
import {
  burnOf,
  fuelFigures,
  LOAD_MEANINGS,
  loadingFigures,
  loadingOf,
  longestByFuel,
} from '../../../analysis/program/index.ts';
import { toSi } from '../../../analysis/units/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const figures = loadingFigures(ouzel);
const litres = (value: number) => toSi(value, 'L');
const fuel = { takeoff: litres(60), burn: litres(25), full: litres(112) };

describe('the loading of a flight', () => {
  it('is the sum of its moments', () => {
    const { takeoff, landing, added } = loadingOf('light-forward', 1, 1, fuel, figures);
    // 742 kg at 2.34 m, 78 kg at 2.55 m, 60 L at 6 lb per US gallon at 2.35 m
    const gas = litres(60) * toSi(6, 'lb/gal');
    expect(takeoff?.mass).toBeCloseTo(742 + 78 + gas, 9);
    expect(takeoff?.arm).toBeCloseTo((742 * 2.34 + 78 * 2.55 + gas * 2.35) / (820 + gas), 9);
    expect(landing?.mass).toBeCloseTo(820 + litres(35) * toSi(6, 'lb/gal'), 9);
    expect(added).toEqual([]);
  });

  it('reaches the maximum less its uncertainty at gross', () => {
    const { takeoff, inside } = loadingOf('gross', 1, 1, fuel, figures);
    expect(inside).toBe(true);
    expect((takeoff?.mass ?? 0) + (takeoff?.massU95 ?? 0)).toBeLessThanOrEqual(1080);
    expect(takeoff?.mass).toBeGreaterThan(1070);
  });

  it('keeps the centre of gravity in the band of its load', () => {
    for (const [load, part, of] of [
      ['payload-steps', 3, 5],
      ['aft-steps', 3, 3],
      ['corners', 4, 4],
    ] as const) {
      const { takeoff } = loadingOf(load, part, of, fuel, figures);
      const [low, high] = LOAD_MEANINGS[load].band(part, of);
      const at = ((takeoff?.arm ?? 0) - 2.33) / (2.484 - 2.33);
      expect(at, load).toBeGreaterThanOrEqual(low);
      expect(at, load).toBeLessThanOrEqual(high);
    }
  });

  it('says how far it falls short, and what is missing', () => {
    const poor = loadingFigures(
      demo('ouzel', { loading: { stations: [{ name: 'left seat', arm: { value: 2.55, unit: 'm' }, kind: 'seat' }] } }),
    );
    expect(loadingOf('gross', 1, 1, fuel, poor).words).toContain('the load places cannot reach it');
    const bare = loadingFigures(demo('ouzel', { loading: { pilotMass: undefined } }));
    expect(loadingOf('gross', 1, 1, fuel, bare)).toMatchObject({ takeoff: null, inside: null });
  });
});

describe('fuel', () => {
  it('leaves the transfer tank out: it does not feed the engine', () => {
    expect(fuelFigures(ouzel)?.usable).toBeCloseTo(litres(112), 9);
  });

  it('keeps the larger of the time reserve and the fuel at which the flight ends', () => {
    // 30 min at 36 L/h is 18 L; 35 L were agreed
    expect(fuelFigures(ouzel)?.reserve).toBeCloseTo(litres(35), 9);
    const less = fuelFigures(demo('ouzel', { plan: { turnBackFuel: undefined } }));
    expect(less?.reserve).toBeCloseTo(litres(18), 9);
    const hour = fuelFigures(demo('ouzel', { plan: { turnBackFuel: undefined }, fuel: { reserve: undefined } }));
    expect(hour?.reserve).toBeCloseTo(litres(36), 9);
    expect(hour?.words).toContain('for want of a stated one');
  });

  it('burns take-off power in the climb and three quarters for the rest', () => {
    const known = fuelFigures(ouzel);
    if (!known) throw new Error('no figures');
    // 3000 ft at 500 ft/min is 6 min at 48 L/h, 54 min at 36 L/h
    expect(burnOf(60, toSi(3000, 'ft'), known)).toBeCloseTo(litres(4.8 + 32.4), 9);
  });

  it('limits a flight to what the tanks hold', () => {
    const small = fuelFigures(demo('ouzel', { plan: { turnBackFuel: { value: 90 } } }));
    // 22 L left at 48 L/h
    expect(longestByFuel(small, 100)).toBeCloseTo(27.5, 6);
    expect(longestByFuel(null, 100)).toBe(100);
  });
});
