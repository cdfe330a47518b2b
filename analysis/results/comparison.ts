/** Comparison of a measured value with a limit: shown, not shown, exceeded. */
import type { Comparison } from './result.ts';

export interface LimitQuestion {
  what: string;
  value: number | null;
  /** two-sided U95; null where a part of it is unknown */
  u95: number | null;
  limit: number;
  unit: string;
  /** margin that must remain, SI, 0 or more */
  margin?: number;
  /** 'upper' when the value must stay below the limit */
  side?: 'upper' | 'lower';
  /** a yardstick, not a limit of this airplane */
  reference?: true;
}

/**
 * Compare a value with a limit. Shown: value + U95 <= limit - margin. Exceeded: value - U95 > limit. Otherwise, and
 * whenever the value or its uncertainty is missing, not shown. Mirrored for a lower limit.
 * @param question value, U95, limit and margin, SI of one unit
 * @returns the comparison with its words
 * @source [jcgm-100]; the decision rule is the project's own: wrong at most 2.5 % of the time when it says shown
 */
export function compareWithLimit(question: LimitQuestion): Comparison {
  const { what, value, u95, limit, unit, margin = 0, side = 'upper' } = question;
  const sign = side === 'upper' ? 1 : -1;
  const base = { what, limit, unit, value, u95, ...(question.reference ? { reference: true as const } : {}) };
  if (value === null || !Number.isFinite(value)) {
    return { ...base, value: null, outcome: 'not shown', words: 'not shown: there is no value to compare' };
  }
  if (u95 === null || !Number.isFinite(u95)) {
    return { ...base, u95: null, outcome: 'not shown', words: 'not shown: part of the uncertainty is unknown' };
  }
  const beyond = sign * (value - limit);
  if (beyond + u95 <= -margin) return { ...base, outcome: 'shown', words: 'shown, uncertainty and margin included' };
  if (beyond - u95 > 0) return { ...base, outcome: 'exceeded', words: 'exceeded, even allowing for the uncertainty' };
  const words =
    beyond > 0
      ? 'not shown: the best estimate itself is beyond the limit'
      : 'not shown: the uncertainty reaches past the limit or its margin';
  return { ...base, outcome: 'not shown', words };
}
