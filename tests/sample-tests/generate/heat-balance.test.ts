import { describe, expect, it } from 'vitest';
import { toSi } from '../../../analysis/units/index.ts';
import {
  coldState,
  coolantHeat,
  groundPower,
  heatTimeConstants,
  type Operation,
  OUZEL_HEAT,
  steadyHeat,
  stepHeat,
} from '../../../sample-tests/generate/heat-balance.ts';

const held: Operation = {
  engineSpeed: toSi(2500, 'rpm'),
  power: groundPower(toSi(2500, 'rpm')),
  exit: 1,
  fan: false,
  dynamicPressure: 0,
  air: toSi(21, 'degC'),
  gust: 1,
};

function settle(operation: Operation, seconds: number, from = coldState(operation.air)) {
  let state = from;
  for (let t = 0; t < seconds; t += 0.5) state = stepHeat(state, operation, 0.5);
  return state;
}

describe('heat balance of the samples', () => {
  it('the stated steady state is where a run of four hours ends', () => {
    for (const operation of [held, { ...held, fan: true, exit: 0.3 }, { ...held, engineSpeed: toSi(1800, 'rpm') }]) {
      const end = settle(operation, 4 * 3600);
      const steady = steadyHeat(operation);
      // Floor: the slow node after 25 of its time constants, far under 1 mK.
      expect(Math.abs(end.coolant - steady.coolant)).toBeLessThan(1e-3);
      expect(Math.abs(end.oil - steady.oil)).toBeLessThan(1e-3);
    }
  });

  it('all heat put in is stored or carried off: warming from cold with nothing open', () => {
    const seconds = 60;
    const end = settle({ ...held, air: toSi(-30, 'degC') }, seconds, coldState(toSi(-30, 'degC')));
    const rise = (value: number) => value - toSi(-30, 'degC');
    const stored =
      OUZEL_HEAT.coolantCapacity * rise(end.coolant) +
      OUZEL_HEAT.headCapacity * rise(end.head) +
      OUZEL_HEAT.oilCapacity * rise(end.oil);
    const heat = (1 + OUZEL_HEAT.oilShare) * coolantHeat(held.engineSpeed, held.power) * seconds;
    // The skin and the oil cooler carry off a few per cent in the first minute.
    expect(stored / heat).toBeGreaterThan(0.9);
    expect(stored / heat).toBeLessThan(1);
  });

  it('the main time constant is the rate at which a disturbance of coolant dies', () => {
    const constants = heatTimeConstants(held);
    const steady = steadyHeat(held);
    const start = { ...steady, coolant: steady.coolant + 4, head: steady.head + 4 };
    const early = settle(held, 100, start).coolant - steady.coolant;
    const late = settle(held, 300, start).coolant - steady.coolant;
    // One part in twenty: the weak slow node and the head's own seconds mix in a little.
    expect(Math.abs(200 / Math.log(early / late) / constants.main - 1)).toBeLessThan(0.05);
    expect(constants.fast).toBeLessThan(20);
    expect(constants.slow).toBeGreaterThan(1.5 * constants.main);
  });

  it('more air, more fan, more door: colder; more power: hotter', () => {
    const coolant = (change: Partial<Operation>) => steadyHeat({ ...held, ...change }, true).coolant;
    const base = coolant({});
    expect(coolant({ fan: true })).toBeLessThan(base);
    expect(coolant({ exit: 0.3 })).toBeGreaterThan(base);
    expect(coolant({ dynamicPressure: 1500 })).toBeLessThan(base);
    expect(coolant({ power: 2 * held.power })).toBeGreaterThan(base);
    expect(coolant({ air: held.air + 10 }) - base).toBeCloseTo(10, 6);
  });
});
