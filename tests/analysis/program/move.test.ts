/** Moves by hand: what is allowed comes with its comparison, what is not with its reasons. */
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../analysis/catalogue/index.ts';
import { checkOrder, moveOuting, moveTest, planProgram } from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const program = planProgram(ouzel);
const numberOf = (test: string) => program.outings.find((outing) => outing.tests.includes(test))?.number ?? 0;

describe('moving a test', () => {
  it('is allowed where every rule holds', () => {
    const moved = moveTest(ouzel, program, { test: 'canopy-flight-check', to: numberOf('flap-speed-limits') });
    if (!moved.allowed) throw new Error(moved.reasons.join('\n'));
    expect(checkOrder(moved.program, CATALOGUE, ouzel)).toEqual([]);
    expect(moved.changes.map((one) => one.what)).toEqual(['changed', 'changed']);
  });

  it('is allowed into an outing of its own', () => {
    const moved = moveTest(ouzel, program, {
      test: 'com-range-flight',
      to: numberOf('com-range-flight') + 1,
      newOuting: true,
    });
    if (!moved.allowed) throw new Error(moved.reasons.join('\n'));
    expect(moved.program.outings).toHaveLength(program.outings.length + 1);
  });

  it.each([
    ['stall-clean', 'airspeed-calibration-first', /needs “Slow flight/],
    ['flap-speed-limits', 'cooling-climb-first', /are both new/],
    ['glide', 'static-longitudinal', /needs “Glide polar/],
    ['speed-expansion', 'low-g-push', /flown alone has company/],
  ])('%s to the outing of %s is refused with the reason', (test, to, reason) => {
    const moved = moveTest(ouzel, program, { test, to: numberOf(to) });
    if (moved.allowed) throw new Error('it was allowed');
    expect(moved.reasons.join('\n')).toMatch(reason);
  });

  it('needs a test and an outing that exist', () => {
    expect(moveTest(ouzel, program, { test: 'spin-recovery', to: 3 })).toMatchObject({ allowed: false });
    expect(moveTest(ouzel, program, { test: 'glide', to: 999 })).toMatchObject({ allowed: false });
    expect(moveTest(ouzel, program, { test: 'glide', to: 0 })).toMatchObject({ allowed: false });
  });
});

describe('moving an outing', () => {
  it('is allowed past one that does not wait for it', () => {
    const from = numberOf('flap-speed-limits');
    expect(moveOuting(ouzel, program, from, from + 1)).toMatchObject({ allowed: true });
  });

  it('is refused past what it needs', () => {
    const from = numberOf('first-flight');
    expect(moveOuting(ouzel, program, from, 1)).toMatchObject({ allowed: false });
    expect(moveOuting(ouzel, program, 999, 1)).toMatchObject({ allowed: false });
  });
});
