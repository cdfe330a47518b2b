/** Smaller parts: one-sided comparisons, repeats, boiling, the hot day's reference, the slow part, bends in a trace. */
import { describe, expect, it } from 'vitest';
import { pressureAt } from '../../../../analysis/air/index.ts';
import { boilingTemperature, fitHeating, type HeldRecord } from '../../../../analysis/models/index.ts';
import { combineUncertainty, seededRandom } from '../../../../analysis/numbers/index.ts';
import { boilingMargin } from '../../../../analysis/reductions/cooling-ground/boiling-margin.ts';
import { misfitOf } from '../../../../analysis/reductions/cooling-ground/broken-curve.ts';
import { comparisonsOf } from '../../../../analysis/reductions/cooling-ground/comparisons.ts';
import { hotReference, onHotDay } from '../../../../analysis/reductions/cooling-ground/hot-day-margin.ts';
import type { Measured } from '../../../../analysis/reductions/cooling-ground/measure.ts';
import { isSameCondition, runScatter } from '../../../../analysis/reductions/cooling-ground/repeatability.ts';
import { sharedTau } from '../../../../analysis/reductions/cooling-ground/shared-tau.ts';
import { slopeOf } from '../../../../analysis/reductions/cooling-ground/slow-node.ts';
import type { Answered } from '../../../../analysis/reductions/cooling-ground/tables.ts';
import { toSi } from '../../../../analysis/units/index.ts';
import { airplaneWith } from '../../../blind/cooling-days.ts';

const C = (degrees: number) => toSi(degrees, 'degC');
const ouzel = airplaneWith('ouzel');
const NO_REPEAT = { s: 0, nu: 10, priorUsed: false, assumed: false };

const curve = (seconds: number, T: (t: number) => number, noise = 0.15): HeldRecord => {
  const random = seededRandom(8);
  const hot = Float64Array.from({ length: seconds }, (_, i) => T(i) + noise * random.normal());
  return { dt: 1, hot, air: new Float64Array(seconds).fill(294), step: 0, perSample: 1 };
};
const heating = (t: number) => 372 - 30 * Math.exp(-t / 280);

/** A resolved point as the other parts see it. */
function measured(more: Partial<Measured> = {}): Measured {
  const record = curve(900, heating);
  const fit = fitHeating(record);
  if (!fit) throw new Error('no fit');
  const hold = {
    from: 0,
    to: 899,
    engineSpeed: 41.7,
    exit: 1,
    fan: false,
    manifold: null,
    doorMoving: false,
    changedAt: null,
  };
  const series = {
    quantity: 'coolant-temperature',
    file: '',
    column: '',
    t: record.hot,
    v: record.hot,
    holdSeconds: 0,
    flags: [],
  };
  const hot = {
    quantity: 'coolant-temperature',
    part: 'coolant' as const,
    series,
    values: record.hot,
    steady: record.hot,
    step: 0,
    perSample: 1,
    broken: [],
  };
  const sources = [{ part: 'calibration' as const, u: 0.5, nu: 50 }];
  return {
    point: { from: 0, to: 899, hold, regime: 'fully-open', hot, label: 'hold', byHand: false },
    hot,
    regime: 'fully-open',
    fromSeconds: 0,
    toSeconds: 899,
    air: 294,
    outside: 294,
    start: 342,
    end: 371,
    rate: 0,
    fit,
    equilibrium: 372,
    doubt: combineUncertainty(sources),
    sources,
    allowance: 3,
    because: null,
    noCurve: false,
    speedDrift: 0,
    lag: 6,
    ...more,
  };
}

const answered = (one: Measured): Answered => ({
  measured: one,
  file: '',
  hotDay: null,
  times: { toCaution: null, toLimit: null, cautionEarly: null, limitEarly: null, shareNever: null, flags: [] },
});

describe('comparisons are one-sided about the slow part', () => {
  const reference = { air: C(36), height: 226, words: '' };
  const outcome = (equilibrium: number) =>
    comparisonsOf(
      [answered(measured({ equilibrium }))],
      { caution: null, limit: 380, restart: null },
      reference,
      NO_REPEAT,
      undefined,
    )[0]?.outcome;

  it('it stands in the way of shown: U95 is 1 K, the slow part 3 K', () => {
    expect(outcome(375.9)).toBe('shown');
    expect(outcome(376.1)).toBe('not shown');
  });

  it('and is no excuse from exceeded', () => {
    expect(outcome(380.9)).toBe('not shown');
    expect(outcome(381.1)).toBe('exceeded');
  });
});

describe('run-to-run scatter', () => {
  it('is the prior without repeats, and follows them when there are many', () => {
    const alone = runScatter([measured()], {});
    expect(alone.repeat).toMatchObject({ s: 1.5, nu: 4, assumed: true });
    expect(alone.flags[0]?.message).toMatch(/no condition was held twice/);
    const twelve = Array.from({ length: 12 }, (_, i) => {
      const one = measured();
      return { ...one, fit: one.fit && { ...one.fit, excess: one.fit.excess + (i % 2 === 0 ? 0.5 : -0.5) } };
    });
    const many = runScatter(twelve, {});
    expect(many.repeat.s).toBeCloseTo(Math.sqrt((12 * 0.25) / 11), 9);
    expect(many.flags).toEqual([]);
    expect(runScatter([measured()], { runScatter: { value: 0.8, unit: 'dK', si: 0.8 } }).repeat.s).toBe(0.8);
  });

  it('counts as one condition what differs by less than 1 % of speed and 5 % of exit, with the same fan', () => {
    const base = { engineSpeed: 41.7, exit: 1, fan: true };
    expect(isSameCondition(base, { engineSpeed: 41.9, exit: 0.97, fan: true })).toBe(true);
    expect(isSameCondition(base, { engineSpeed: 42.5, exit: 1, fan: true })).toBe(false);
    expect(isSameCondition(base, { engineSpeed: 41.7, exit: 0.9, fan: true })).toBe(false);
    expect(isSameCondition(base, { engineSpeed: 41.7, exit: 1, fan: false })).toBe(false);
    expect(isSameCondition({ ...base, exit: null }, { ...base, exit: null })).toBe(true);
  });
});

describe('the hot day', () => {
  it('takes the altitude logged before the field’s, the field’s before sea level, and says when it had none', () => {
    expect(hotReference(ouzel, {}, 1000).reference.height).toBe(1000);
    expect(hotReference(ouzel, {}, null).reference.height).toBe(226);
    const bare = hotReference(undefined, {}, null);
    expect(bare.reference.air).toBeCloseTo(toSi(100, 'degF'), 9);
    expect(bare.flags[0]?.kind).toBe('assumed-value');
    expect(hotReference(ouzel, { hotDay: 'cs22' }, 0).reference.air).toBeCloseTo(C(38), 9);
    const own = { value: 45, unit: 'degC', si: C(45) };
    expect(hotReference(ouzel, { hotDayAir: own }, null).reference.air).toBe(C(45));
  });

  it('carries both sensors, the rule and the scatter, against a Monte Carlo of the same sentence', () => {
    const one = measured({ sources: [{ part: 'noise', u: 0.3, nu: 1e6 }] });
    const repeat = { s: 1.5, nu: 1e6, priorUsed: false, assumed: false };
    const answer = onHotDay(one, { air: 310, height: 0, words: '' }, 385, repeat, undefined);
    // defaults: coolant 3 K and air 2 K at 95 %, taken as normal; the rule 2 % of 78 K
    const random = seededRandom('hot');
    const drawn = Array.from({ length: 40_000 }, () => {
      const T = 372 + 0.3 * random.normal() + 1.5 * random.normal() + 1.5 * random.normal();
      return T + (310 - (294 + random.normal())) + 0.02 * 78 * random.normal();
    }).sort((a, b) => a - b);
    const half = ((drawn[39_000] ?? 0) - (drawn[1000] ?? 0)) / 2;
    expect(answer?.corrected).toBe(388);
    expect(answer?.margin).toBe(-3);
    expect(Math.abs((answer?.doubt.u95 ?? 0) / half - 1)).toBeLessThan(0.03);
    expect(answer?.upper).toBeCloseTo((answer?.doubt.u95 ?? 0) + 3, 9);
    expect(
      onHotDay(measured({ outside: null }), { air: 310, height: 0, words: '' }, 385, repeat, undefined),
    ).toBeNull();
  });
});

describe('boiling', () => {
  const reference = { air: C(36), height: 226, words: '' };
  const answer = {
    corrected: C(110),
    margin: 2,
    doubt: combineUncertainty([{ part: 'noise', u: 1, nu: 30 }]),
    upper: 5,
    flags: [],
  };

  it('stands under the mix at field pressure and cap, less 3 K for the hottest spot', () => {
    const margin = boilingMargin(answer, 'hold', reference, ouzel);
    const T = boilingTemperature({ glycol: 'ethylene', fraction: 0.5, pressure: pressureAt(226) + toSi(1.1, 'bar') });
    expect(margin.value).toBeCloseTo(T - 3 - C(110), 9);
    expect(margin.u95 ?? 0).toBeGreaterThan(6); // 3 K of standard uncertainty of published boiling points alone
    expect(margin.flags[0]?.message).toMatch(/cap/);
  });

  it('is withheld without mix or cap, and names the field', () => {
    const bare = airplaneWith('ouzel', (json) => {
      delete json.cooling?.capPressure;
    });
    expect(boilingMargin(answer, 'hold', reference, bare)).toMatchObject({ value: null, u95: null });
    expect(boilingMargin(answer, 'hold', reference, bare).flags[0]?.message).toMatch(/cooling\.capPressure/);
  });
});

describe('a trace that is no heating curve', () => {
  const departs = (record: HeldRecord) => {
    const fit = fitHeating(record);
    if (!fit) throw new Error('no fit');
    return misfitOf(record, fit);
  };

  it('bends where something was switched', () => {
    const bent = departs(
      curve(1000, (t) => (t < 500 ? heating(t) : 360 + (heating(500) - 360) * Math.exp(-(t - 500) / 250))),
    );
    expect(Math.abs((bent.breakAt ?? 0) - 500)).toBeLessThan(100);
  });

  it('swings where a valve cycles', () => {
    expect(departs(curve(1000, (t) => 365 + 4 * Math.sin(t / 20))).swings).toBeGreaterThanOrEqual(4);
  });

  it('does neither where it is one', () => {
    const plain = departs(curve(1000, heating));
    expect(plain).toMatchObject({ breakAt: null, swings: 0 });
    expect(plain.swing).toBeLessThan(0.2);
  });
});

describe('what other conditions say of a time constant', () => {
  it('is their middle, or what is usual', () => {
    const told = measured();
    expect(Math.abs(sharedTau([told]).tau / (told.fit?.tau ?? 1) - 1)).toBeLessThan(1e-9);
    expect(sharedTau([told]).factor).toBe(2);
    expect(sharedTau([])).toEqual({ tau: 300, factor: 2.5 });
    expect(sharedTau([{ ...told, noCurve: true }]).factor).toBe(2.5);
  });
});

describe('slope', () => {
  it('is that of a line, over gaps', () => {
    const line = Float64Array.from({ length: 100 }, (_, i) => (i % 3 === 0 ? Number.NaN : 350 + 0.02 * i));
    expect(slopeOf(line, 0, 99, 1)).toBeCloseTo(0.02, 3);
    expect(slopeOf(line, 0, 1, 1)).toBeNaN();
  });
});
