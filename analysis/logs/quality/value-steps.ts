/** How a channel moves from row to row: its scatter and its coarseness. */
import { median } from '../../numbers/index.ts';

/** Enough differences for a median; a longer log is thinned evenly. */
const MOST_STEPS = 20_000;

export interface ValueSteps {
  /** robust standard deviation of the differences of neighbouring rows, unit of the values */
  deviation: number;
  /** smallest change seen, unit of the values; 0 when nothing changes */
  quantum: number;
}

/**
 * Scatter and coarseness of a channel.
 * @param values one a row, any one unit; NaN where missing
 * @returns robust deviation of the steps and the smallest step, unit of the values
 */
export function valueSteps(values: Float64Array): ValueSteps {
  const stride = Math.max(1, Math.floor(values.length / MOST_STEPS));
  const steps: number[] = [];
  let quantum = Number.POSITIVE_INFINITY;
  let largest = 0;
  for (const v of values) if (Math.abs(v) > largest) largest = Math.abs(v);
  // unit conversion leaves the last bits of equal steps different
  const noise = largest * 1e-12;
  for (let i = 1; i < values.length; i += stride) {
    const step = Math.abs((values[i] ?? Number.NaN) - (values[i - 1] ?? Number.NaN));
    if (!Number.isFinite(step)) continue;
    steps.push(step);
    if (step > noise && step < quantum) quantum = step;
  }
  return {
    deviation: steps.length > 0 ? 1.4826 * median(steps) : 0,
    quantum: Number.isFinite(quantum) ? quantum : 0,
  };
}
