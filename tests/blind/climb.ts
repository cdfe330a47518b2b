/** Coverage of the climb reduction: cards of a known airplane with scatter between climbs, and how often U95 holds it. */
import { seededRandom } from '../../analysis/numbers/index.ts';
import {
  climbCard,
  constantPower,
  exactAirplane,
  KNOT,
  parabola,
  quantityIn,
  reduce,
  standardRate,
  trueOptima,
} from '../analysis/reductions/climb/flown.ts';
import { CoverageCount, type CoverageRow, coverageLines } from './coverage-row.ts';

/** Five speeds twice over, spread 47 kt, about the best rate. */
const SPEEDS = [28, 34, 40, 46, 52];
const WANTED = [0.9, 0.995] as const;

/** Best speed and best rate at two scatters between climbs and for both kinds of propeller. */
export function coverageClimb(flights: number): CoverageRow[] {
  const rows: CoverageRow[] = [];
  for (const [kind, law] of [
    ['constant-speed', constantPower],
    ['fixed', parabola],
  ] as const) {
    const airplane = exactAirplane({ propeller: { kind } });
    const { Vy } = trueOptima(law);
    for (const scatter of [0.1, 0.2]) {
      const speed = new CoverageCount(`V_y, ${kind} propeller, ${scatter} m/s between climbs`, 'kt', KNOT);
      const rate = new CoverageCount(`best rate, ${kind} propeller, ${scatter} m/s between climbs`, 'm/s');
      let refused = 0;
      for (let i = 0; i < flights; i += 1) {
        const random = seededRandom(`climb ${kind} ${scatter} ${i}`);
        const result = reduce({ points: climbCard({ speeds: SPEEDS, scatter, random, law }), airplane });
        const best = quantityIn(result, 'best-rate-speed');
        const height = quantityIn(result, 'best-rate');
        if (best.value === null || height.value === null) {
          refused += 1;
          continue;
        }
        speed.add(best.value, Vy, halfTowards(best, Vy));
        rate.add(height.value, standardRate(law, Vy), halfTowards(height, standardRate(law, Vy)));
      }
      rows.push(speed.row(flights, refused, WANTED), rate.row(flights, refused, WANTED));
    }
  }
  process.stdout.write(`${coverageLines(rows).join('\n')}\n`);
  return rows;
}

// Intervals are not symmetric: the half that faces the truth is the one that has to hold it.
function halfTowards(
  {
    value,
    interval,
    u95,
  }: { value: number | null; interval?: [number | null, number | null] | undefined; u95: number | null },
  truth: number,
): number {
  const [low, high] = interval ?? [null, null];
  if (value === null || low === null || high === null) return u95 ?? Number.POSITIVE_INFINITY;
  return truth > value ? high - value : value - low;
}
