/** Neighbouring eighths of a turn feel the same gust: how many of them one independent eighth is worth. */
import type { Leg } from './leg.ts';

/** Least blocks of a turn that tell a correlation. */
const LEAST_BLOCKS = 4;
/** Above this correlation the estimate says little more than that it is high. */
const HIGHEST = 0.8;

/**
 * Variance inflation of residuals that follow each other within turns; 1 where no turn was flown.
 * @param legs all legs, blocks of turns in the order flown
 * @param residuals one a leg, m/s
 * @returns factor 1 or more
 * @source first-order correlation pooled over turns, its small-sample bias returned: (1 + r)/(1 - r) [simulation]
 */
export function turnInflation(legs: readonly Leg[], residuals: ArrayLike<number>): number {
  const runs = new Map<number, number[]>();
  legs.forEach((leg, i) => {
    if (leg.role === 'turn') runs.set(leg.run, [...(runs.get(leg.run) ?? []), residuals[i] ?? 0]);
  });
  let [products, squares, blocks, turns] = [0, 0, 0, 0];
  for (const run of runs.values()) {
    if (run.length < LEAST_BLOCKS) continue;
    const mean = run.reduce((sum, r) => sum + r / run.length, 0);
    run.forEach((r, k) => {
      squares += (r - mean) ** 2;
      const next = run[k + 1];
      if (next !== undefined) products += (r - mean) * (next - mean);
    });
    blocks += run.length;
    turns += 1;
  }
  if (!(squares > 0)) return 1;
  const r1 = products / squares;
  const each = blocks / turns;
  const r = Math.min(HIGHEST, Math.max(0, r1 + (1 + 4 * r1) / each));
  return (1 + r) / (1 - r);
}
