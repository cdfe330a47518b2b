/** How far one run of a condition differs from the next: from conditions held twice, steadied by a weak prior. */
import { DEFAULT_REPEATABILITY } from '../../models/index.ts';
import { type Scatter, scatterWithPrior } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { CoolingOptions } from './input.ts';
import type { Measured } from './measure.ts';

/** Two points are one condition within these: share of engine speed, share of exit travel. */
const SAME_SPEED = 0.01;
const SAME_EXIT = 0.05;

export interface Condition {
  engineSpeed: number;
  exit: number | null;
  fan: boolean | null;
}

/** Whether two points ran at one power. */
export function isSamePower(a: Condition, b: Condition): boolean {
  return Math.abs(a.engineSpeed - b.engineSpeed) <= SAME_SPEED * Math.max(a.engineSpeed, b.engineSpeed);
}

/** Whether two points had the door in one place; not logged is one place. */
export function isSameExit(a: Condition, b: Condition): boolean {
  return a.exit === null || b.exit === null ? a.exit === b.exit : Math.abs(a.exit - b.exit) <= SAME_EXIT;
}

/** Whether two points are runs of one condition. */
export function isSameCondition(a: Condition, b: Condition): boolean {
  return isSamePower(a, b) && isSameExit(a, b) && a.fan === b.fan;
}

/**
 * Scatter of one run from the points that repeat a condition.
 * @param measured points, those without an equilibrium are passed over
 * @param options what a person stated, object
 * @returns scatter of one run, K, and a remark while it is mostly assumed
 */
export function runScatter(measured: readonly Measured[], options: CoolingOptions): { repeat: Scatter; flags: Flag[] } {
  const groups: Measured[][] = [];
  for (const one of measured) {
    if (one.equilibrium === null || !one.fit) continue;
    const group = groups.find((other) => other[0] && isSameCondition(other[0].point.hold, one.point.hold));
    if (group) group.push(one);
    else groups.push([one]);
  }
  let [rss, nu] = [0, 0];
  for (const group of groups) {
    const excess = group.map((one) => one.fit?.excess ?? 0);
    const mean = excess.reduce((sum, value) => sum + value, 0) / excess.length;
    rss += excess.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    nu += excess.length - 1;
  }
  const usual = DEFAULT_REPEATABILITY['ground-run-equilibrium'];
  const s0 = options.runScatter?.si ?? usual.s0;
  const repeat = scatterWithPrior({ s0, nu0: usual.nu0 }, rss, nu);
  const seen = nu === 0 ? 'no condition was held twice' : `${nu} repeat${nu === 1 ? '' : 's'} seen`;
  const flags = repeat.assumed
    ? [
        flag(
          'assumed-repeatability',
          `run-to-run scatter of an equilibrium: ${s0.toFixed(1)} K (standard deviation) assumed, ${seen}, ${repeat.s.toFixed(1)} K used; it enters margins and predictions, not the equilibrium of this run`,
        ),
      ]
    : [];
  return { repeat, flags };
}
