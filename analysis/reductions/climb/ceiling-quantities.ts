/** Absolute and service ceiling as quantities: extrapolations, named so, or the reason why there is none. */
import { coverageFactor, fitLine, scatterPosterior } from '../../numbers/index.ts';
import { flag } from '../../remarks/index.ts';
import type { Condition, ResultQuantity } from '../../results/index.ts';
import { CLIMB_SCATTER } from './band-scatter.ts';
import { type Ceiling, type CeilingPoint, ceilingAt, SERVICE_RATE } from './ceiling.ts';
import type { BandResult } from './optima.ts';
import type { StandardRun } from './run.ts';

/** slabs of a check climb a line is drawn through, at least */
const LEAST_SLABS = 4;

/**
 * Ceilings from the best rates of the bands, else from the slabs of a long climb at its own speed.
 * @param solved bands with their curves
 * @param slabs of long climbs
 * @param conditions of the reduction as a whole
 * @returns two quantities, density altitude in m; null with the reason where it is not resolved
 */
export function ceilingQuantities(
  solved: readonly BandResult[],
  slabs: readonly StandardRun[],
  conditions: Record<string, Condition>,
): ResultQuantity[] {
  const best = solved.flatMap(({ band, optimum }): CeilingPoint[] => {
    const rate = optimum?.bestRate;
    if (!rate) return [];
    const { nu } = optimum.scatter;
    const half = Math.max(rate.value - rate.low, rate.high - rate.value);
    return [{ Hd: band.Hd, rate: rate.value, u: half / coverageFactor(nu), nu, s: optimum.scatter.s }];
  });
  const bySlabs = best.length < 2 && slabs.length >= LEAST_SLABS;
  const points = bySlabs ? slabPoints(slabs) : best;
  // Once more for each error common to all bands: it moves the ceiling, and no scatter between climbs shows it.
  const withRate = solved.filter(({ optimum }) => optimum?.bestRate);
  const moved = bySlabs
    ? []
    : (withRate[0]?.rateWith ?? []).map((_, k) =>
        best.map((point, i) => ({ ...point, rate: withRate[i]?.rateWith[k] ?? point.rate })),
      );
  const at = (rate: number) =>
    widened(
      ceilingAt(points, rate),
      moved.map((one) => ceilingAt(one, rate)),
    );
  const from = bySlabs ? 'slabs of one climb at its own airspeed' : 'best rate of each band';
  return [
    quantity('absolute-ceiling', at(0), { ...conditions, from }),
    quantity('service-ceiling', at(SERVICE_RATE), {
      ...conditions,
      from,
      rate: { value: SERVICE_RATE, unit: 'm/s' },
    }),
  ];
}

function widened(ceiling: Ceiling, moved: readonly Ceiling[]): Ceiling {
  const { value, low, high } = ceiling;
  if (value === null) return ceiling;
  const common = 2 * Math.hypot(...moved.map((one) => (one.value === null ? 0 : one.value - value)));
  return {
    ...ceiling,
    low: low === null ? null : value - Math.hypot(value - low, common),
    high: high === null ? null : value + Math.hypot(high - value, common),
  };
}

// What the slabs stand off their line is their scatter; all slabs share the degrees of freedom, so each has its part.
function slabPoints(slabs: readonly StandardRun[]): CeilingPoint[] {
  const line = fitLine(
    slabs.map((slab) => slab.Hd),
    slabs.map((slab) => slab.rateStandard),
  );
  const rss = line.residuals.reduce((sum, value) => sum + value ** 2, 0);
  const { s, nu } = scatterPosterior(CLIMB_SCATTER, rss, slabs.length - 2);
  return slabs.map((slab) => ({ Hd: slab.Hd, rate: slab.rateStandard, u: s, nu: nu / slabs.length, s }));
}

function quantity(name: string, ceiling: Ceiling, conditions: Record<string, Condition>): ResultQuantity {
  const { value, low, high, why } = ceiling;
  const half = value === null || low === null || high === null ? null : Math.max(value - low, high - value);
  return {
    name,
    value,
    unit: 'm',
    u95: half,
    ...(value === null ? {} : { interval: [low, high] satisfies [number | null, number | null] }),
    parts:
      half === null ? {} : { repeatability: Math.sqrt(Math.max(0, half ** 2 - ceiling.fit ** 2)), fit: ceiling.fit },
    conditions: { ...conditions, scale: 'density altitude' },
    flags: [
      value === null
        ? flag('not-resolved', why)
        : flag('extrapolated', 'a straight line carried above the highest climb: an estimate, not a height shown'),
    ],
  };
}
