/** Air read by hand at a few heights, as a function of height. */
import { L } from '../../air/index.ts';

/**
 * Straight lines between the heights read, and the standard lapse beyond them.
 * @param points pressure altitude, m, and air, K, at least one
 * @returns air at a pressure altitude, K
 * @throws Error when no point is given: a mistake of ours
 */
export function lapseBetween(points: readonly { H: number; T: number }[]): (H: number) => number {
  const rising = points.toSorted((a, b) => a.H - b.H);
  const [lowest] = rising;
  const highest = rising[rising.length - 1];
  if (!lowest || !highest) throw new Error('air at one height at least');
  return (H) => {
    if (H <= lowest.H) return lowest.T - L * (H - lowest.H);
    if (H >= highest.H) return highest.T - L * (H - highest.H);
    const above = rising.findIndex((one) => one.H >= H);
    const [a, b] = [rising[above - 1] ?? lowest, rising[above] ?? highest];
    return b.H > a.H ? a.T + ((b.T - a.T) * (H - a.H)) / (b.H - a.H) : a.T;
  };
}
