/** Standard draws shared by all distributions of one result: the same seed, so that a result never changes by itself. */
import { seededRandom } from '../../numbers/index.ts';

export interface Draws {
  size: number;
  /** evenly spread over 0..1, in no order */
  even(): Float64Array;
  /** Student t of one independent origin */
  student(origin: string, nu: number): Float64Array;
}

/** Enough for a 5 % quantile to 0.2 % of probability (JCGM 101 asks for as many as the figure needs). */
const SIZE = 10_000;
/** From so many conditions on each gets fewer draws, down to this: a 5 % quantile to 0.7 %. */
const MANY = 30;
const FEWEST = 1000;
/** Degrees of freedom drawn for, rounded down to: fewer give longer tails. */
const STEPS = [1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 30, 50, 100];

/**
 * Draws from a seed.
 * @param seed text
 * @param conditions how many conditions will use them: a log of many hours shares the work among them
 * @returns the draws, each origin made when first asked for
 */
export function drawsFrom(seed: string, conditions = 1): Draws {
  const size = conditions > MANY ? Math.max(FEWEST, Math.floor((MANY * SIZE) / conditions)) : SIZE;
  const made = new Map<string, Float64Array>();
  const once = (name: string, make: () => Float64Array) => {
    const known = made.get(name);
    if (known) return known;
    const fresh = make();
    made.set(name, fresh);
    return fresh;
  };
  return {
    size,
    even: () => once('even', () => shuffled(seed, size)),
    student: (origin, nu) => {
      const step = nu > 200 ? Number.POSITIVE_INFINITY : (STEPS.findLast((one) => one <= nu) ?? nu);
      return once(`${origin} ${step}`, () => {
        const random = seededRandom(`${seed} ${origin} ${step}`);
        return new Float64Array(size).map(() => random.student(step));
      });
    },
  };
}

// One draw from each of as many equal slices, so that even a rare time constant comes up as often as it should.
function shuffled(seed: string, size: number): Float64Array {
  const random = seededRandom(`${seed} even`);
  const out = new Float64Array(size).map((_, i) => (i + random.uniform()) / size);
  for (let i = size - 1; i > 0; i -= 1) {
    const j = random.whole(i + 1);
    const held = out[i] ?? 0;
    out[i] = out[j] ?? 0;
    out[j] = held;
  }
  return out;
}
