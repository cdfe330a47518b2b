/** Rows of the method's own experiments for one segment and for the position-error curve, with the product's code. */
import { describe, expect, it } from 'vitest';
import { coverageLines, shareOf } from './coverage-row.ts';
import { coverageCurvePoints } from './position-error-curve.ts';
import { coverageSegmentMeans, MEAN_CASES } from './segment-means.ts';

const SEGMENTS = 400;
/** Two standard deviations of a share of 0.9 from so many. */
const SLACK = 2 * Math.sqrt((0.9 * 0.1) / SEGMENTS);

describe('mean of one segment', () => {
  it.each(MEAN_CASES.map((one) => [one.what, one] as const))('%s', (_, one) => {
    const [row] = coverageSegmentMeans(SEGMENTS, [one]);
    if (!row) throw new Error('no row');
    const [line] = coverageLines([row]);
    expect(shareOf(row), line).toBeGreaterThanOrEqual(one.wanted[0] - SLACK);
    expect(shareOf(row), line).toBeLessThanOrEqual(one.wanted[1] + SLACK);
  });
});

describe('position-error curve, 24 legs', () => {
  it('holds at its worst place too', () => {
    const flights = 60;
    const { mean, worst } = coverageCurvePoints(flights);
    const slack = 2 * Math.sqrt((0.9 * 0.1) / flights);
    expect(mean).toBeGreaterThanOrEqual(0.93 - slack);
    expect(worst).toBeGreaterThanOrEqual(0.9 - slack);
  });
});
