import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../analysis/numbers/index.ts';
import type { Leg } from '../../../../analysis/reductions/airspeed/leg.ts';
import { turnInflation } from '../../../../analysis/reductions/airspeed/turn-correlation.ts';

const block = (role: Leg['role'], run: number): Leg => ({
  role,
  run,
  label: '',
  flaps: 'up',
  fromSeconds: 0,
  toSeconds: 10,
  written: false,
  samples: {
    ias: new Float64Array(1),
    height: new Float64Array(1),
    air: new Float64Array(1),
    north: new Float64Array(1),
    east: new Float64Array(1),
  },
  dt: 1,
  covered: 1,
  mass: null,
  loadFactor: 1,
  along: null,
  lengthDoubt: null,
  ias: 45,
  stepBias: 0,
});

/** First-order residuals of correlation r in turns of 16 blocks: how the mean of a turn really scatters. */
function turns(r: number, count: number, seed: string): { legs: Leg[]; residuals: number[] } {
  const random = seededRandom(seed);
  const legs: Leg[] = [];
  const residuals: number[] = [];
  for (let run = 0; run < count; run += 1) {
    let e = random.normal();
    for (let k = 0; k < 16; k += 1) {
      legs.push(block('turn', run));
      residuals.push(e);
      e = r * e + Math.sqrt(1 - r * r) * random.normal();
    }
  }
  return { legs, residuals };
}

describe('blocks of a turn', () => {
  it('that know nothing of each other count nearly whole, those that hang together as their law says', () => {
    for (const [r, wanted] of [
      [0, 1],
      [0.4, 1.4 / 0.6],
      [0.6, 4],
    ] as const) {
      const { legs, residuals } = turns(r, 60, `turns ${r}`);
      expect(Math.abs(turnInflation(legs, residuals) / wanted - 1), `r ${r}`).toBeLessThan(0.25);
    }
  });

  it('of a straight leg or of too short a turn say nothing', () => {
    expect(turnInflation([block('leg', 0), block('leg', 1)], [1, -1])).toBe(1);
    expect(turnInflation([block('turn', 0), block('turn', 0), block('turn', 0)], [1, 1, -2])).toBe(1);
  });
});
