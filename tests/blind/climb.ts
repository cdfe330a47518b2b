/** Coverage of the climb reduction: cards of a known airplane with scatter between climbs, and whole simulated flights. */
import { seededRandom } from '../../analysis/numbers/index.ts';
import {
  type CardPlan,
  climbCard,
  constantPower,
  exactAirplane,
  KNOT,
  kindsOf,
  parabola,
  quantityIn,
  reduce,
  standardRate,
  trueOptima,
} from '../analysis/reductions/climb/flown.ts';
import { flyClimbs } from './climb-flight.ts';
import { add, coverageClimbLogs, drawnClimbs, reduceFlown } from './climb-logs.ts';
import { CoverageCount, type CoverageRow, coverageLines } from './coverage-row.ts';

/** Five speeds twice over, spread 47 kt, about the best rate. */
const SPEEDS = [28, 34, 40, 46, 52];
const WANTED = [0.93, 0.97] as const;
const ALWAYS = [0.99, 1] as const;
/** A law that is not the propeller's own: 81 % is what the method's own experiments found, and its stated limit. */
const WRONG_LAW = [0.75, 1] as const;

type Law = (V: number) => number;

function cardRows(
  what: string,
  flights: number,
  law: Law,
  kind: 'fixed' | 'constant-speed',
  plan: CardPlan,
  wanted: readonly [number, number] = WANTED,
): CoverageRow[] {
  const airplane = exactAirplane({ propeller: { kind } });
  const { Vy } = trueOptima(law);
  const speed = new CoverageCount(`${what}: V_y`, 'kt', KNOT);
  const rate = new CoverageCount(`${what}: best rate`, 'm/s');
  let refused = 0;
  for (let i = 0; i < flights; i += 1) {
    const random = seededRandom(`${what} ${i}`);
    const result = reduce({ points: climbCard({ ...plan, random, law }), airplane });
    refused += add(speed, quantityIn(result, 'best-rate-speed'), Vy);
    add(rate, quantityIn(result, 'best-rate'), standardRate(law, Vy));
  }
  return [speed.row(flights, refused, wanted), rate.row(flights, refused, wanted)];
}

/** Best speed and best rate of five speeds twice, at two scatters between climbs and for both kinds of propeller. */
export function coverageClimbCards(flights: number): CoverageRow[] {
  return [0.1, 0.2].flatMap((scatter) => [
    ...cardRows(`five speeds twice, constant speed, ${scatter} m/s`, flights, constantPower, 'constant-speed', {
      speeds: SPEEDS,
      scatter,
    }),
    ...cardRows(`five speeds twice, fixed, ${scatter} m/s`, flights, parabola, 'fixed', { speeds: SPEEDS, scatter }),
    ...cardRows(
      `a fixed one taken for constant speed, ${scatter} m/s`,
      flights,
      parabola,
      'constant-speed',
      { speeds: SPEEDS, scatter },
      WRONG_LAW,
    ).slice(0, 1),
  ]);
}

/** The best rate beyond the speeds flown is to be refused; at their end, refused or held. */
export function coverageClimbEnds(flights: number): CoverageRow[] {
  const airplane = exactAirplane();
  const { Vy } = trueOptima(constantPower);
  const beyond = [7 * KNOT, 12 * KNOT, 18 * KNOT, 24 * KNOT, 30 * KNOT].map((more) => Vy + more);
  const end = [0, 6, 12, 18, 24].map((more) => Vy + more * KNOT);
  return [
    { what: 'best rate 7 kt below the slowest speed flown: refused', speeds: beyond, wanted: ALWAYS },
    { what: 'best rate at the slowest speed flown: refused or held', speeds: end, wanted: [0.95, 1] as const },
  ].map(({ what, speeds, wanted }) => {
    const count = new CoverageCount(what, 'kt', KNOT);
    for (let i = 0; i < flights; i += 1) {
      const random = seededRandom(`${what} ${i}`);
      const result = reduce({ points: climbCard({ speeds, scatter: 0.1, random }), airplane });
      const best = quantityIn(result, 'best-rate-speed');
      if (best.value === null) count.add(0, 0, 0);
      else if (wanted === ALWAYS) count.add(1, 0, 0);
      else add(count, best, Vy);
    }
    return count.row(flights, 0, wanted);
  });
}

/** One climb alone, of one to three minutes: its standard rate has only the expected scatter to go by. */
export function coverageLoneClimb(flights: number): CoverageRow[] {
  return [60, 120, 180].flatMap((seconds) =>
    coverageClimbLogs(
      flights,
      (seed) => ({ ...drawnClimbs(seed), speeds: [1], pairs: false, seconds }),
      `one climb of ${seconds} s`,
    ).filter((row) => row.what.includes('rate of a climb')),
  );
}

/** A climb whose airspeed falls by ten knots and more: no rate without a word. */
export function coverageChangingSpeed(flights: number): CoverageRow[] {
  const count = new CoverageCount('airspeed falls by 12 kt along the climb: refused or flagged', 'm/s');
  for (let seed = 0; seed < flights; seed += 1) {
    const plan = { ...drawnClimbs(seed), speeds: [1.2], pairs: false, drift: 12 * KNOT };
    const result = reduceFlown(flyClimbs(plan, `changing ${seed}`), plan);
    const said = result.status === 'refused' || result.flags.some((one) => one.message.includes('airspeed changed'));
    count.add(said || !kindsOf(result).includes('lone-run') ? 0 : 1, 0, 0);
  }
  return [count.row(flights, 0, [0.95, 1])];
}

/** Sawtooth climbs through two bands, for the ceilings. */
export function coverageClimbBands(flights: number): CoverageRow[] {
  return coverageClimbLogs(flights, (seed) => ({ ...drawnClimbs(seed), bands: [800, 2800] }), 'two bands');
}

export function coverageClimb(flights: number): CoverageRow[] {
  const rows = [
    coverageClimbLogs,
    coverageClimbBands,
    coverageClimbCards,
    coverageClimbEnds,
    coverageLoneClimb,
    coverageChangingSpeed,
  ].flatMap((part) => {
    const found = part(flights);
    process.stdout.write(`${coverageLines(found).join('\n')}\n`);
    return found;
  });
  return rows;
}
