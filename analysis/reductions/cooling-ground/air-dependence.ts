/** How an equilibrium follows the air, beside the one-to-one rule: once one condition was run on days far apart. */
import { noiseHalf } from '../../models/index.ts';
import { coverageFactor } from '../../numbers/index.ts';
import type { ResultTable } from '../../results/index.ts';
import type { Measured } from './measure.ts';
import { isSameCondition } from './repeatability.ts';

/** Air must differ by this before a slope means anything, K. Common practice, no source. */
const APART = 8;

/**
 * Slope of equilibrium on air for each condition held in airs far enough apart.
 * @param measured points of all runs, list
 * @returns one table, or none
 */
export function airDependence(measured: readonly Measured[]): ResultTable[] {
  const settled = measured.filter((one) => one.equilibrium !== null && one.air !== null && one.fit);
  const rows: ResultTable['rows'] = [];
  settled.forEach((cold, i) => {
    const same = settled.filter((other, j) => j !== i && isSameCondition(cold.point.hold, other.point.hold));
    const warmest = same.sort((a, b) => (b.air ?? 0) - (a.air ?? 0))[0];
    const coolest = !same.some((other) => (other.air ?? 0) < (cold.air ?? 0));
    const span = (warmest?.air ?? 0) - (cold.air ?? 0);
    if (!warmest?.fit || !cold.fit || !coolest || span < APART) return;
    const slope = ((warmest.equilibrium ?? 0) - (cold.equilibrium ?? 0)) / span;
    const u = (one: Measured) => (one.fit ? noiseHalf(one.fit) / coverageFactor(one.fit.nu) : 0);
    const nu = Math.min(cold.fit.nu, warmest.fit.nu);
    rows.push([
      cold.point.label,
      cold.air,
      warmest.air,
      slope,
      (coverageFactor(nu) * Math.hypot(u(cold), u(warmest))) / span,
    ]);
  });
  if (rows.length === 0) return [];
  const columns = [
    { name: 'label', unit: 'none' },
    { name: 'air-from', unit: 'K' },
    { name: 'air-to', unit: 'K' },
    { name: 'slope', unit: '1' },
    { name: 'slope-u95-noise-only', unit: '1' },
  ];
  return [{ name: 'air-dependence', columns, rows }];
}
