/** Peaks on the hot day against caution and limit: shown, not shown, exceeded. */
import type { Airplane } from '../../airplane/index.ts';
import { type Comparison, compareWithLimit } from '../../results/index.ts';
import { type Answer, nameOf } from './answer.ts';
import { type Corrected, correctedAt, type Reference } from './corrected.ts';

/** The hottest instant is worth a line of its own when it is this much hotter than the corrected peak, K. */
const APART = 0.2;

/**
 * Comparisons of every temperature.
 * @param answers of all climbs, list
 * @param airplane the description: the builder's own cooling margin, or undefined
 * @param reference hot day, scatter and sensors, by answer
 * @returns the corrected peak against caution and limit, and the hottest instant against the limit where it is another
 * @throws OutOfRange when a height is beyond any airplane's
 */
export function comparisonsOf(
  answers: readonly Answer[],
  airplane: Airplane | undefined,
  reference: (one: Answer) => Reference,
): Comparison[] {
  const margin = airplane?.plan.coolingMargin?.si ?? 0;
  const kept = margin > 0 ? `, ${margin.toFixed(0)} K kept` : '';
  return answers.flatMap((one) => {
    const list: Comparison[] = [];
    const name = nameOf(one);
    const { caution, limit } = one.limits;
    const value = one.counts ? one.corrected : null;
    const add = (what: string, bound: number | null, corrected: typeof value, keep: number) => {
      if (bound === null) return;
      const question = { what, limit: bound, unit: 'K', margin: keep };
      list.push(corrected ? oneSided(corrected, question) : withoutPeak(one, question, reference(one)));
    };
    add(`${name}: peak on the hot day against caution`, caution, value, 0);
    add(`${name}: peak on the hot day against the limit${kept}`, limit, value, margin);
    if (value && one.hottest && one.hottest.value - value.value > APART) {
      add(`${name}: hottest instant on the hot day against the limit${kept}`, limit, one.hottest, margin);
    }
    return list;
  });
}

// Thinner air at constant power can only make the hot day hotter than the rule says and stands in the way of "shown"; a
// start that a thermostat held can only make it cooler and stands in the way of "exceeded".
function oneSided(corrected: Corrected, question: Parameters<typeof withoutPeak>[1]): Comparison {
  const { value, doubt, startAllowance, powerAllowance } = corrected;
  const upper = compareWithLimit({ ...question, value, u95: doubt.u95 + powerAllowance });
  if (upper.outcome === 'shown') return upper;
  const lower = compareWithLimit({ ...question, value, u95: doubt.u95 + startAllowance });
  return lower.outcome === 'exceeded' ? lower : upper.outcome === 'exceeded' ? lower : upper;
}

// Without a peak nothing is shown; but what was read already may be too much by itself.
function withoutPeak(
  one: Answer,
  question: { what: string; limit: number; unit: string; margin: number },
  reference: Reference,
): Comparison {
  const withheld = compareWithLimit({ ...question, value: null, u95: null });
  if (one.regime !== 'fully-open' || one.course.way.airRead[one.peak.at] !== 1) return withheld;
  const soFar = correctedAt(one.course, one.peak.at, reference);
  const sofar = compareWithLimit({ ...question, value: soFar.value, u95: soFar.doubt.u95 });
  if (sofar.outcome !== 'exceeded') {
    return { ...withheld, words: 'not shown: it had not peaked when the climb ended' };
  }
  return { ...sofar, words: `${sofar.words}; and it had not peaked when the climb ended` };
}
