import { describe, expect, it } from 'vitest';
import { reductionOf } from '../../../../analysis/reductions/index.ts';
import { climbCard, constantPower, exactAirplane, MIDDLE, reduce, standardRate } from './flown.ts';

const airplane = exactAirplane();
const result = reduce({ points: climbCard({ speeds: [28, 33, 38, 43, 48, 53] }), airplane });
const asked = (cas: number, Hd: number, mass?: number) =>
  reductionOf('climb')?.predict?.(JSON.parse(JSON.stringify(result)), {
    'calibrated-airspeed': { value: cas, unit: 'm/s' },
    'density-altitude': { value: Hd, unit: 'm' },
    ...(mass === undefined ? {} : { mass: { value: mass, unit: 'kg' } }),
  });

describe('prediction of the next climb', () => {
  it('holds the rate of the law inside its interval', () => {
    const [rate] = asked(40, MIDDLE)?.quantities ?? [];
    const truth = standardRate(constantPower, 40);
    expect(rate?.low ?? 9).toBeLessThan(truth);
    expect(rate?.high ?? 0).toBeGreaterThan(truth);
    expect(rate?.value).toBeCloseTo(truth, 1);
  });

  it('refuses beyond the speeds, the heights and the mass it stands for', () => {
    expect(asked(60, MIDDLE)).toMatchObject({ status: 'refused', reason: expect.stringContaining('speeds flown') });
    expect(asked(40, 2500)).toMatchObject({ status: 'refused', reason: expect.stringContaining('bands flown') });
    expect(asked(40, MIDDLE, 700)).toMatchObject({ status: 'refused', reason: expect.stringContaining('700 kg') });
    expect(
      reductionOf('climb')?.predict?.(
        { ...result, model: {} },
        {
          'calibrated-airspeed': { value: 40, unit: 'm/s' },
          'density-altitude': { value: MIDDLE, unit: 'm' },
        },
      )?.status,
    ).toBe('refused');
  });
});
