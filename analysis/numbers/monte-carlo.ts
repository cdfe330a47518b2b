/** Propagation of distributions by drawing: for results that are not smooth or not symmetric in their inputs. */
import { quantileOfSorted } from './quantile.ts';

/** Draws that settle a 95 % end to about 2 % of its distance. */
export const DRAWS = 10_000;

export interface Drawn {
  /** median of the draws */
  median: number;
  mean: number;
  /** standard deviation of the draws; NaN where some are infinite */
  u: number;
  /** 2.5 % and 97.5 % quantiles; infinite where that many draws are */
  low: number;
  high: number;
  /** share of draws the model could not evaluate (NaN); they are in no quantile */
  failed: number;
  /** all draws in rising order */
  sorted: Float64Array;
}

/**
 * Draw the inputs, evaluate the model, take quantiles: several results from the same draws.
 * @param draw one set of inputs a call, function (seeded)
 * @param model results of one set of inputs, function; NaN where it has none, Infinity allowed
 * @param draws how many, count
 * @returns the distribution of each result, in the order of the model
 * @source [jcgm-101] clause 7; probabilistically symmetric interval
 */
export function monteCarlo(
  draw: () => readonly number[],
  model: (inputs: readonly number[]) => readonly number[],
  draws = DRAWS,
): Drawn[] {
  const columns: number[][] = [];
  for (let k = 0; k < draws; k += 1) {
    model(draw()).forEach((value, j) => {
      let column = columns[j];
      if (!column) {
        column = [];
        columns[j] = column;
      }
      column.push(value);
    });
  }
  return columns.map(describe);
}

function describe(values: readonly number[]): Drawn {
  const sorted = Float64Array.from(values)
    .filter((value) => !Number.isNaN(value))
    .sort();
  const mean = sorted.reduce((sum, value) => sum + value / sorted.length, 0);
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    median: quantileOfSorted(sorted, 0.5),
    mean: sorted.length > 0 ? mean : Number.NaN,
    u: sorted.length > 1 ? Math.sqrt(squares / (sorted.length - 1)) : Number.NaN,
    low: quantileOfSorted(sorted, 0.025),
    high: quantileOfSorted(sorted, 0.975),
    failed: values.length > 0 ? 1 - sorted.length / values.length : 1,
    sorted,
  };
}

/**
 * Half-width that covers both ends from a best estimate.
 * @param drawn the distribution, object
 * @param value best estimate, unit of the result
 * @returns the larger distance to an end, unit of the result; infinite where an end is
 * @source the larger half-width is quoted, both ends stand beside it: the project's own rule [jcgm-101]
 */
export function largerHalfWidth(drawn: Drawn, value: number): number {
  return Math.max(value - drawn.low, drawn.high - value);
}
