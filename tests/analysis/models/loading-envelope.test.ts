/** The envelope: limits by geometry, and inside only with the uncertainty inside. */
import { describe, expect, it } from 'vitest';
import { armLimitsAt, type Balance, marginInEnvelope } from '../../../analysis/models/index.ts';

const TRAPEZE = [
  { mass: 340, arm: 0.3 },
  { mass: 600, arm: 0.34 },
  { mass: 600, arm: 0.52 },
  { mass: 340, arm: 0.5 },
];

const at = (mass: number, arm: number, massU95 = 0, armU95 = 0): Balance => ({
  mass,
  arm,
  moment: mass * arm,
  massU95,
  armU95,
});

describe('limits at a mass', () => {
  it('lie on the outline', () => {
    expect(armLimitsAt(TRAPEZE, 340)).toEqual({ forward: 0.3, aft: 0.5 });
    const middle = armLimitsAt(TRAPEZE, 470);
    expect(middle?.forward).toBeCloseTo(0.32, 12);
    expect(middle?.aft).toBeCloseTo(0.51, 12);
    expect(armLimitsAt(TRAPEZE, 601)).toBeNull();
    expect(armLimitsAt(TRAPEZE, 339)).toBeNull();
  });
});

describe('a case', () => {
  it('is inside only with its whole box', () => {
    expect(marginInEnvelope(TRAPEZE, at(470, 0.325)).inside).toBe(true);
    expect(marginInEnvelope(TRAPEZE, at(470, 0.325, 0, 0.006))).toMatchObject({ inside: false, estimateInside: true });
    expect(marginInEnvelope(TRAPEZE, at(599, 0.4, 2)).inside).toBe(false);
    expect(marginInEnvelope(TRAPEZE, at(597, 0.4, 2)).inside).toBe(true);
    expect(marginInEnvelope(TRAPEZE, at(470, 0.29))).toMatchObject({ inside: false, estimateInside: false });
  });

  it('has its margins with the uncertainty taken off', () => {
    const margin = marginInEnvelope(TRAPEZE, at(340, 0.4, 0, 0.01));
    expect(margin.forward).toBeCloseTo(0.09, 12);
    expect(margin.aft).toBeCloseTo(0.09, 12);
    expect(margin.mass).toBe(260);
  });
});
