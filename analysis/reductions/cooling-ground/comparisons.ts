/** Equilibria against their limits, in test air and on the hot day: shown, not shown, exceeded. */
import type { Airplane } from '../../airplane/index.ts';
import type { PartLimits } from '../../models/index.ts';
import { combineUncertainty, type Scatter } from '../../numbers/index.ts';
import { type Comparison, compareWithLimit } from '../../results/index.ts';
import { show } from '../../units/index.ts';
import type { HotReference } from './hot-day-margin.ts';
import { aboutWords } from './quantities.ts';
import type { Answered } from './tables.ts';

/**
 * Comparisons of fitted points.
 * @param answers points of one temperature, list
 * @param limits of it, object
 * @param reference the hot day, object
 * @param repeat scatter of one run, object
 * @param airplane the description: the builder's own cooling margin, or undefined
 * @returns for each point that nothing regulated: test air against caution and limit, hot day against the limit
 */
export function comparisonsOf(
  answers: readonly Answered[],
  limits: PartLimits,
  reference: HotReference,
  repeat: Scatter,
  airplane: Airplane | undefined,
): Comparison[] {
  const margin = airplane?.plan.coolingMargin?.si ?? 0;
  const hotWords = show(reference.air, 'degC', { decimals: 0 }).text;
  return answers.flatMap((one) => {
    const { measured, hotDay } = one;
    if (measured.regime === 'cooling' || measured.regime === 'warming') return [];
    // Oil: were its cooler regulating, a hotter day would only open it further; the one-to-one figure errs to the hot side.
    const open = measured.regime === 'fully-open' || (measured.regime === 'unknown' && measured.hot.part === 'oil');
    const about = aboutWords(one);
    const ahead = open && measured.equilibrium !== null ? nextRunU95(one, repeat) : null;
    const list: Comparison[] = [];
    const add = (what: string, limit: number | null, value: number | null, lower: number | null, keep: number) => {
      if (limit === null) return;
      list.push(oneSided({ what, limit, value, lower, allowance: measured.allowance, margin: keep }));
    };
    const settles = open ? measured.equilibrium : null;
    if (settles !== null) add(`${about}: settles, against caution`, limits.caution, settles, ahead, 0);
    if (settles !== null) add(`${about}: settles, against the limit`, limits.limit, settles, ahead, 0);
    const corrected = open ? hotDay : null;
    const kept = margin > 0 ? `, ${margin.toFixed(0)} K kept` : '';
    if (measured.hot.part === 'oil' && settles === null) return list;
    add(
      `${about}: settles on the hot day of ${hotWords}, against the limit${kept}`,
      limits.limit,
      corrected?.corrected ?? null,
      corrected?.doubt.u95 ?? null,
      margin,
    );
    return list;
  });
}

function nextRunU95({ measured }: Answered, repeat: Scatter): number {
  return combineUncertainty([...measured.sources, { part: 'repeatability', u: repeat.s * Math.SQRT2, nu: repeat.nu }])
    .u95;
}

interface OneSided {
  what: string;
  limit: number;
  value: number | null;
  /** U95 downwards; the allowance is added upwards */
  lower: number | null;
  allowance: number;
  margin: number;
}

// The slow part can only make it hotter: it stands in the way of "shown" and gives no excuse from "exceeded".
function oneSided({ what, limit, value, lower, allowance, margin }: OneSided): Comparison {
  const question = { what, value, limit, unit: 'K', margin };
  const upper = compareWithLimit({ ...question, u95: lower === null ? null : lower + allowance });
  if (upper.outcome !== 'not shown' || lower === null) return upper;
  const strict = compareWithLimit({ ...question, u95: lower });
  return strict.outcome === 'exceeded' ? strict : upper;
}
