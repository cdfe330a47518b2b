/** One row of the segments table: the point in figures, null where the data do not resolve them. */
import type { PartLimits } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { show } from '../../units/index.ts';
import type { Measured } from './measure.ts';
import type { Outlook } from './outlook.ts';
import type { Trace } from './trace.ts';

export interface Times {
  /** s after the start of the point; null: never in most runs, or not resolved */
  toCaution: number | null;
  toLimit: number | null;
  cautionEarly: number | null;
  limitEarly: number | null;
  /** share of runs that never reach the limit, null where not resolved */
  shareNever: number | null;
  flags: Flag[];
}

/** Times and temperatures are quoted for half as long again as the run; beyond that a bound. */
export const AHEAD = 1.5;

/**
 * Times to caution and limit of a point.
 * @param trace the run, object
 * @param measured the point, object
 * @param outlook of its next run, or null where it has no fit
 * @param limits of its temperature, object
 * @returns times from the start of the point: seen where it was seen, else of the next run like it
 * @throws OutOfRange never: time constants of a model are above 0
 */
export function timesOf(trace: Trace, measured: Measured, outlook: Outlook | null, limits: PartLimits): Times {
  const flags: Flag[] = [];
  const caution = answerFor(trace, measured, outlook, limits.caution);
  const limit = answerFor(trace, measured, outlook, limits.limit);
  for (const [name, answer] of [
    ['caution', caution],
    ['limit', limit],
  ] as const) {
    if (answer?.beyond && measured.equilibrium !== null) {
      flags.push(
        flag(
          'bound-only',
          `${measured.point.label}: time to ${name} is beyond half as long again as the run; at least ${Math.round(answer.early ?? 0)} s is supported`,
          spanOf(measured),
        ),
      );
    }
    if (answer?.seen)
      flags.push(
        flag(
          'method-note',
          `${measured.point.label}: ${name} was reached in the run; the time is as seen, not fitted`,
          spanOf(measured),
        ),
      );
  }
  return {
    toCaution: caution?.median ?? null,
    toLimit: limit?.median ?? null,
    cautionEarly: caution?.early ?? null,
    limitEarly: limit?.early ?? null,
    shareNever: limit?.never ?? null,
    flags,
  };
}

interface Answer {
  median: number | null;
  early: number | null;
  never: number | null;
  seen: boolean;
  beyond: boolean;
}

function answerFor(trace: Trace, measured: Measured, outlook: Outlook | null, bound: number | null): Answer | null {
  if (bound === null || outlook === null) return null;
  const seen = seenAt(trace, measured, bound);
  const horizon = AHEAD * (measured.toSeconds - measured.fromSeconds);
  const start = { temperature: outlook.model.start, air: measured.air ?? 0 };
  const next = outlook.timeToLimit(start, bound);
  const resolved = measured.equilibrium !== null;
  // The operating figure is for the next run: what this one was seen to do is one draw of it, never its early end.
  const earliest = seen === null ? next.early : Math.min(seen, next.early);
  const never = earliest === Number.POSITIVE_INFINITY;
  return {
    median: seen ?? (resolved && next.median <= horizon ? next.median : null),
    early: never ? (resolved ? null : horizon) : Math.min(earliest, horizon),
    never: resolved ? next.never : null,
    seen: seen !== null,
    beyond: seen === null && next.median > horizon && next.median < Number.POSITIVE_INFINITY,
  };
}

// First time the smoothed reading is at the bound, from below, inside the point.
function seenAt(trace: Trace, { point, hot }: Measured, bound: number): number | null {
  const { dt } = trace.grid;
  const steady = hot.steady.subarray(point.from, point.to + 1);
  const at = steady.findIndex((T) => T >= bound);
  return at < 0 ? null : at * dt;
}

/** The seconds of a point, for remarks. */
export function spanOf(measured: Measured): { fromSeconds: number; toSeconds: number } {
  return { fromSeconds: measured.fromSeconds, toSeconds: measured.toSeconds };
}

/**
 * Remarks on a point that has no equilibrium.
 * @param measured the point, object
 * @param times its times, object
 * @returns why not, and the bound the data do give
 */
export function unresolvedRemarks(measured: Measured, times: Times): Flag[] {
  const { fit, point, because } = measured;
  if (!fit || because === null) return [];
  if (measured.noCurve) return [flag('not-resolved', `${point.label}: no equilibrium, ${because}`, spanOf(measured))];
  const words = (si: number) => show(si, 'degC', { decimals: 0 }).text;
  const rising = measured.rate > 0;
  const settles = rising
    ? `It settles at ${words(Math.max(fit.air + fit.excessLow, measured.end - 1))} or higher`
    : `It was still falling, through ${words(measured.end)}`;
  const early = times.limitEarly ?? times.cautionEarly;
  const air = measured.air === null ? '' : ` in air of ${words(measured.air)}`;
  const minutes =
    early === null || !rising ? '' : `; at least ${(early / 60).toFixed(1)} min at this power${air} from its start`;
  return [flag('bound-only', `${point.label}: no equilibrium, ${because}. ${settles}${minutes}`, spanOf(measured))];
}
