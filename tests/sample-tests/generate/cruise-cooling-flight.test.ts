import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { cruiseCoolingFlight } from '../../../sample-tests/generate/cruise-cooling-flight.ts';

const flight = cruiseCoolingFlight();

describe('cruise cooling flight of the samples', () => {
  const { points, between } = flight.truth;

  it('tells the story: two points that regulate, thirteen that do not, none over caution', () => {
    const regulated = points.filter((one) => one.equilibrium - one.equilibriumThermostatOpen > 1);
    expect(regulated).toHaveLength(2);
    expect(points).toHaveLength(15);
    expect(Math.max(...flight.states.map((s) => fromSi(s.coolant, 'degC')))).toBeLessThan(105);
    for (const one of points) expect(Math.abs(one.coolantAtEnd - one.equilibrium)).toBeLessThan(toSi(2.5, 'dK'));
  });

  it('power, speed and door vary apart from each other', () => {
    const spread = (of: (one: (typeof points)[number]) => number) =>
      Math.max(...points.map(of)) / Math.min(...points.map(of));
    expect(spread((one) => one.fuelFlow)).toBeGreaterThan(1.5);
    expect(spread((one) => one.dynamicPressure)).toBeGreaterThan(3);
    expect(spread((one) => one.exit)).toBeGreaterThan(3);
    const gear = points.filter((one) => one.dynamicPressure < 1900);
    const clean = points.filter((one) => one.dynamicPressure > 2200);
    const flows = (list: typeof points) => list.map((one) => one.fuelFlow);
    expect(Math.max(...flows(gear))).toBeGreaterThan(Math.min(...flows(clean)));
  });

  it('the throttle is left alone: what is burnt in the last minute wanders under 2 %, the height under 25 m', () => {
    for (const one of points) {
      const late = flight.states.filter((s) => s.t > one.toSeconds - 60 && s.t <= one.toSeconds);
      for (const s of late) expect(Math.abs(s.fuelFlow / one.fuelFlow - 1)).toBeLessThan(0.03);
      for (const s of late) expect(Math.abs(s.height - 1000)).toBeLessThan(25);
    }
  });

  it('settings between the flown ones lie between them', () => {
    expect(between.length).toBeGreaterThan(8);
    for (const one of between) {
      expect(one.exit).toBeGreaterThanOrEqual(0.12);
      expect(one.equilibrium).toBeGreaterThan(toSi(92, 'degC'));
    }
  });

  it('the same seed gives the same flight, another one another', () => {
    expect(cruiseCoolingFlight().truth).toEqual(flight.truth);
    expect(cruiseCoolingFlight({ seed: 7 }).truth.points[0]?.fuelFlow).not.toBe(points[0]?.fuelFlow);
  });
});
