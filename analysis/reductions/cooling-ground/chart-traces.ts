/** What a chart draws: the run thinned out, and the fitted curve of each point. Nothing is computed from these. */
import { temperatureAfter } from '../../models/index.ts';
import type { Run } from './run.ts';
import type { Answered } from './tables.ts';

/** A screen shows no more. */
const POINTS = 1200;
const CURVE_POINTS = 60;

/**
 * Traces and curves for the chart of a result.
 * @param runs measured runs, list
 * @param answers points with their fits, list
 * @returns plain lists, K and s, null where missing
 * @throws OutOfRange never: time constants of a fit are above 0
 */
export function chartOf(runs: readonly Run[], answers: readonly Answered[]) {
  return {
    traces: runs.map(({ trace }) => {
      const every = Math.max(1, Math.ceil(trace.grid.n / POINTS));
      const thinned = (values: Float64Array | null) =>
        values === null
          ? null
          : Array.from({ length: Math.ceil(trace.grid.n / every) }, (_, i) => rounded(values[i * every] ?? Number.NaN));
      return {
        file: trace.file,
        startSeconds: trace.grid.start,
        stepSeconds: trace.grid.dt * every,
        temperatures: trace.main.map((hot) => ({ quantity: hot.quantity, values: thinned(hot.values) })),
        oil: trace.oil ? thinned(trace.oil.values) : null,
        air: thinned(trace.air),
      };
    }),
    curves: answers.flatMap(({ measured, file }) => {
      const { fit } = measured;
      if (!fit || measured.noCurve) return [];
      const length = measured.toSeconds - measured.fromSeconds;
      const seconds = Array.from({ length: CURVE_POINTS + 1 }, (_, i) => (1.5 * length * i) / CURVE_POINTS);
      return [
        {
          file,
          label: measured.point.label,
          fromSeconds: measured.fromSeconds,
          measuredSeconds: length,
          seconds: seconds.map((t) => measured.fromSeconds + t),
          // in air of the segment's mean; the fit itself follows the measured air
          values: seconds.map((t) => rounded(temperatureAfter(fit.start, fit.air + fit.excess, fit.tau, t))),
        },
      ];
    }),
  };
}

const rounded = (value: number) => (Number.isNaN(value) ? null : Math.round(value * 100) / 100);
