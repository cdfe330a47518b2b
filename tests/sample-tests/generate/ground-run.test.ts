import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { type GroundRun, type GroundSegment, groundRun } from '../../../sample-tests/generate/ground-run.ts';

const OPEN_SHOWN = 94;
const SETTLING_SECONDS = 30;

/** The plainest possible fit of one node in the true air: least squares in D and T(0) on a grid of time constants. */
function oneNodeFit(run: GroundRun, segment: GroundSegment): number | null {
  const shown = run.columns.coolant;
  let from = segment.fromSeconds;
  while (from < segment.toSeconds && (shown[from] ?? 0) < OPEN_SHOWN) from += 1;
  from += SETTLING_SECONDS;
  if (segment.toSeconds - from < 300) return null;
  let best = { sum: Number.POSITIVE_INFINITY, excess: Number.NaN };
  for (let tau = 120; tau < 900; tau *= 1.02) {
    const share = 1 - Math.exp(-1 / tau);
    let [air, fade] = [0, 1];
    let [aa, ab, bb, ay, by, yy] = [0, 0, 0, 0, 0, 0];
    for (let t = from; t < segment.toSeconds; t += 1) {
      const y = (shown[t] ?? 0) - air;
      aa += fade * fade;
      ab += fade * (1 - fade);
      bb += (1 - fade) * (1 - fade);
      ay += fade * y;
      by += (1 - fade) * y;
      yy += y * y;
      air += share * (fromSi(run.trueAir[t] ?? 0, 'degC') - air);
      fade *= 1 - share;
    }
    const determinant = aa * bb - ab * ab;
    const start = (ay * bb - by * ab) / determinant;
    const excess = (aa * by - ab * ay) / determinant;
    const sum = yy - start * ay - excess * by;
    if (sum < best.sum) best = { sum, excess };
  }
  return best.excess;
}

const resolvable = (run: GroundRun) =>
  run.truth.segments.filter((s) => s.regime === 'fully-open' && s.toSeconds - s.fromSeconds >= 600);

describe('ground runs of the samples', () => {
  it('the same seed gives the same bytes, another seed another day', () => {
    expect(groundRun({ story: 1 }).csv).toBe(groundRun({ story: 1 }).csv);
    expect(groundRun({ story: 1, seed: 7 }).csv).not.toBe(groundRun({ story: 1, seed: 8 }).csv);
  });

  it('tells the story: stopped at a displayed 104 degrees, fan on stabilises at 2500 rpm and fan off does not', () => {
    for (const story of [1, 2] as const) {
      const run = groundRun({ story });
      const stop = run.truth.stoppedAtSeconds ?? 0;
      const shown = Array.from(
        run.columns.coolant.subarray(0, run.truth.shutdownAtSeconds),
        (c) => Math.round(2 * c) / 2,
      );
      expect(shown.findIndex((c) => c >= 104)).toBeGreaterThan(stop - 10);
      expect(run.truth.peakAfterShutdown).toBeGreaterThan(run.truth.coolantAtShutdown + 1);
      expect(run.truth.timeToRestart).not.toBeNull();
    }
    const limit = toSi(104, 'degC');
    const segments = groundRun({ story: 2 }).truth.segments.filter(
      (s) => Math.abs(fromSi(s.engineSpeed, 'rpm') - 2500) < 1,
    );
    for (const s of segments) expect((s.equilibrium ?? 0) < limit, s.label).toBe(s.fan);
  });

  it('one honest time constant finds the equilibrium of every long open segment within 1 K, slow node and all', () => {
    for (const story of [1, 2] as const) {
      for (const options of [{ noise: 0 }, {}]) {
        const run = groundRun({ story, ...options });
        const offset = options.noise === 0 ? 0 : run.truth.offsets.coolant;
        const segments = resolvable(run);
        expect(segments.length).toBeGreaterThanOrEqual(story === 1 ? 1 : 4);
        for (const segment of segments) {
          const excess = oneNodeFit(run, segment);
          if (excess === null) throw new Error(`${segment.label}: too short to fit`);
          expect(Math.abs(excess - offset - (segment.equilibriumOverAir ?? 0)), segment.label).toBeLessThan(1);
        }
      }
    }
  });

  it('other seeds scatter about the truth: no bias beyond 0.2 K in the median of 40', () => {
    const misses: number[] = [];
    for (let seed = 1; seed <= 40; seed += 1) {
      const run = groundRun({ story: 2, seed });
      for (const segment of resolvable(run)) {
        const excess = oneNodeFit(run, segment);
        if (excess !== null) misses.push(excess - run.truth.offsets.coolant - (segment.equilibriumOverAir ?? 0));
      }
    }
    misses.sort((a, b) => a - b);
    expect(Math.abs(misses[misses.length >> 1] ?? 9)).toBeLessThan(0.2);
  });
});
