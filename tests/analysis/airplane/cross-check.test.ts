/** Contradictions inside a description: each check raised by a description that has it, and by none that has not. */
import { describe, expect, it } from 'vitest';
import { crossCheck } from '../../../analysis/airplane/index.ts';
import { demo } from '../demo-airplanes.ts';

const words = (change: Record<string, unknown>, name: 'ouzel' | 'wrenlet' = 'ouzel') =>
  crossCheck(demo(name, change)).map((one) => one.message);

describe('the demo airplanes', () => {
  it('carry the two remarks their story has, and no other', () => {
    expect(words({})).toHaveLength(2);
    expect(words({})[0]).toContain('128 kt, is above the clean stall times the root of the limit load factor, 113 kt');
    expect(words({})[1]).toContain('217 kt true');
    expect(words({}, 'wrenlet')).toHaveLength(1);
  });

  it('lose them when the figures fit', () => {
    const fitting = {
      speeds: { manoeuvring: { value: 113 }, neverExceed: { value: 185 } },
      plan: { speedExpansionTarget: { value: 185 } },
    };
    expect(words(fitting)).toEqual([]);
  });
});

describe('a contradiction is named with its fields', () => {
  const usual = words({}).length;

  it.each<[string, Record<string, unknown>, RegExp]>([
    [
      'caution over limit',
      { limits: { coolant: { caution: { value: 115 } } } },
      /limits.coolant.caution is above limits.coolant.limit/,
    ],
    ['thermostat', { cooling: { thermostatStart: { value: 95 } } }, /thermostat starts/],
    ['speeds', { speeds: { gearOperation: { value: 130 } } }, /speeds.gearOperation is above speeds.gearExtended/],
    ['approach', { speeds: { approach: { value: 60 } } }, /below 1.3 x the landing stall, 68 kt/],
    ['lift-off', { speeds: { liftOff: { value: 50 } } }, /below 1.1 x/],
    ['volts', { limits: { bus: { low: { value: 10 } } } }, /limits.battery.minimum is above limits.bus.low/],
    ['usable over capacity', { fuel: tanks({ usable: { value: 60, unit: 'L' } }) }, /more usable fuel than it holds/],
    ['transfer to nowhere', { fuel: tanks({ transfersTo: 'roof' }) }, /transfers to roof, which is no tank/],
    ['transfer without a tank', { fuel: tanks({}) }, /no tank says where/],
    ['tank without arm', { fuel: tanks({ arm: undefined }) }, /has no arm/],
    ['tank far away', { fuel: tanks({ arm: { value: 23, unit: 'm' } }) }, /check its arm and unit/],
    ['endurance', { engine: { takeoffFuelFlow: { value: 110 } } }, /not an hour of flight with its reserve/],
    ['turn-back fuel', { plan: { turnBackFuel: { value: 70 } } }, /more than half/],
    ['battery', { electrical: { essentialLoad: { value: 80 } } }, /less than 30 min/],
    ['generator', { electrical: { essentialLoad: { value: 60 } } }, /over 80 %/],
    ['lanes', { engine: { lanes: undefined } }, /number of its lanes/],
    ['chord', { loading: { mac: { leadingEdge: { value: 1.2 } } } }, /of the mean aerodynamic chord/],
    ['envelope and maximum', { limits: { mass: { maximum: { value: 1100 } } } }, /the maximum mass is 1100 kg/],
    ['pilot and seat', { loading: { pilotMass: { value: 130 } } }, /heavier than the first seat/],
    ['floors', { plan: { bailOut: { value: 4500 } } }, /plan.bailOut is above plan.stallFloor/],
  ])('%s', (_, change, expected) => {
    const found = words(change);
    expect(found.length).toBeGreaterThan(usual - 1);
    expect(found.filter((one) => expected.test(one))).toHaveLength(1);
  });

  it('carries a code of the list and the paths', () => {
    const found = crossCheck(demo('ouzel', { limits: { coolant: { caution: { value: 115 } } } }));
    const one = found.find((remark) => remark.paths.includes('limits.coolant.caution'));
    expect(one?.kind).toBe('fields-disagree');
  });
});

function tanks(change: Record<string, unknown>) {
  const left = {
    name: 'left',
    capacity: { value: 58, unit: 'L' },
    usable: { value: 56, unit: 'L' },
    arm: { value: 2.35, unit: 'm' },
  };
  const right = { ...left, name: 'right' };
  return { tanks: [left, { ...right, ...change }] };
}
