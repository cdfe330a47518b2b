/** What the legs can carry: a correction for each speed or only a curve, a drifting wind or a steady one, or nothing. */
import { OutOfRange, type Refusal, refusal } from '../../remarks/index.ts';
import type { AirChain } from './air-chain.ts';
import { curvePlans } from './curve.ts';
import type { Leg } from './leg.ts';
import { DILUTION_REFUSE } from './rows.ts';
import { type Plan, type Solution, solveLegs } from './solve.ts';
import { speedGroups } from './speeds.ts';
import { plainerWinds, windModel } from './wind-model.ts';

export interface Planned {
  plan: Plan;
  solution: Solution;
  /** how weakly each speed is held, error of true airspeed for a unit error of one leg */
  dilutions: number[];
}

/**
 * Choose the richest plan that the legs carry, and solve it.
 * @param legs all legs
 * @param wingArea m2, or null
 * @param chain how the instruments are read
 * @returns plan and answer, or a refusal that says what is missing
 */
export function planLegs(legs: readonly Leg[], wingArea: number | null, chain: AirChain): Planned | Refusal {
  const groups = speedGroups(legs);
  const speedOnly = groups.some((group) => Number.isNaN(group.ias));
  const curves = speedOnly ? [] : curvePlans(groups, legs, wingArea);
  const terms = curves.reduce((sum, plan) => sum + plan.terms, 0);
  const least = legs.every((leg) => leg.along) ? 2 : 3;
  if (legs.length < least) {
    return refusal(
      'too-few-points',
      `${counted(legs.length, 'leg')}: wind and airspeed need ${least} at the least, in directions well apart`,
    );
  }
  let best: Planned | null = null;
  let trouble: Refusal | null = null;
  for (const free of speedOnly ? [true] : [true, false]) {
    const rich = windModel(legs, free ? groups.length : terms);
    for (const wind of plainerWinds(legs, rich)) {
      const tried = attempt(legs, { groups, wind, curves, free, wingArea }, chain);
      if ('code' in tried) {
        if (trouble?.code !== 'out-of-domain') trouble = tried;
        continue;
      }
      const worst = Math.max(...tried.dilutions);
      if (worst <= DILUTION_REFUSE) return tried;
      if (!best || Math.min(...tried.dilutions) < Math.min(...best.dilutions)) best = tried;
    }
  }
  if (best && Math.min(...best.dilutions) <= DILUTION_REFUSE) return best;
  if (best) {
    return refusal(
      'bad-geometry',
      `the legs point in too few directions through the air: an error of one leg would be multiplied by ${Math.min(...best.dilutions).toFixed(1)} (refused above ${DILUTION_REFUSE}; four legs at right angles: 0.5)`,
    );
  }
  return trouble ?? refusal('too-few-points', `${counted(legs.length, 'leg')} cannot be solved`);
}

function attempt(legs: readonly Leg[], plan: Plan, chain: AirChain): Planned | Refusal {
  const unknowns =
    plan.wind.axes.length * plan.wind.terms.length +
    (plan.free ? plan.groups.length : plan.curves.reduce((sum, one) => sum + one.terms, 0));
  if (legs.length < unknowns) {
    return refusal(
      'too-few-points',
      `${counted(legs.length, 'leg')} for ${unknowns} unknowns: ${plan.groups.length} speeds and the wind`,
    );
  }
  try {
    const solution = solveLegs(legs, plan, chain);
    return { plan, solution, dilutions: dilutionsOf(plan, solution) };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    if (error.quantity === 'least singular value') {
      return refusal(
        'bad-geometry',
        'the legs do not tell the wind from the airspeed: two reciprocal directions say nothing of the wind across them',
      );
    }
    return refusal('out-of-domain', `${error.message}; a unit or a channel may be wrong`);
  }
}

function dilutionsOf(plan: Plan, solution: Solution): number[] {
  const before = plan.wind.axes.length * plan.wind.terms.length;
  return plan.groups.map((_, g) => {
    const weights = solution.gradients[g] ?? [];
    const variance = weights.reduce(
      (sum, a, j) =>
        sum + a * weights.reduce((inner, b, k) => inner + (solution.fit.inverse[before + j]?.[before + k] ?? 0) * b, 0),
      0,
    );
    return Math.sqrt(Math.max(0, variance)) * (solution.slopes[g] ?? 1);
  });
}

function counted(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}
