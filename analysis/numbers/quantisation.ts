/** A recorder's step: how large it is, and whether it acts as noise or as a bias. */

/** Scatter above this share of the step dithers it: the step is then noise. */
const DITHERED_FROM = 0.3;

/**
 * The step in which a channel was recorded.
 * @param values readings, SI (a step of the file's unit survives the conversion), NaN left out
 * @returns step in the unit of the values; 0 where no step shows
 * @source greatest common measure of the gaps between distinct values (Euclid) [memory]
 */
export function quantisationStep(values: ArrayLike<number>): number {
  const distinct = distinctValues(values);
  const gaps = distinct.slice(1).map((value, i) => value - (distinct[i] ?? value));
  const least = Math.min(...gaps);
  if (!Number.isFinite(least)) return 0;
  const near = 0.02 * least;
  const step = gaps.reduce((common, gap) => commonMeasure(gap, common, near), least);
  return step > 2 * near ? step : 0;
}

// Euclid with a tolerance: what is within `near` of a whole multiple counts as one.
function commonMeasure(a: number, b: number, near: number): number {
  while (b > near) {
    const rest = Math.abs(a - b * Math.round(a / b));
    a = b;
    b = rest;
  }
  return a;
}

// A channel with more distinct values than this has a step too fine to matter.
const MOST_DISTINCT = 2000;

function distinctValues(values: ArrayLike<number>): number[] {
  let largest = 0;
  for (let i = 0; i < values.length; i += 1) largest = Math.max(largest, Math.abs(values[i] ?? 0) || 0);
  const grain = largest * 1e-9; // a conversion of unit leaves rounding of about 1e-16
  const seen = new Set<number>();
  for (let i = 0; i < values.length && seen.size <= MOST_DISTINCT; i += 1) {
    const value = values[i] ?? Number.NaN;
    if (!Number.isNaN(value)) seen.add(grain > 0 ? Math.round(value / grain) * grain : 0);
  }
  return seen.size > MOST_DISTINCT ? [] : [...seen].sort((a, b) => a - b);
}

export interface StepEffect {
  /** variance to add to each sample's noise */
  perSample: number;
  /** standard uncertainty of a bias that does not average, infinite degrees of freedom, once a segment */
  bias: number;
}

/**
 * What a recording step does to a mean.
 * @param scatter standard deviation inside the segment, ramps included (a ramp dithers itself), unit of the values
 * @param step recording step, same unit, 0 for none
 * @returns variance per sample, or bias once per segment
 * @source q^2/12 for a rectangular error [jcgm-100] F.2.2.1; switch at 0.3 q [simulation]
 */
export function stepEffect(scatter: number, step: number): StepEffect {
  if (scatter > DITHERED_FROM * step) return { perSample: step ** 2 / 12, bias: 0 };
  return { perSample: 0, bias: step / Math.sqrt(12) };
}
