/** What a new plan changes, and what it makes of the sheets that are printed already. */
import type { Airplane } from '../airplane/index.ts';
import { type ArrangementChange, compareArrangements, keyOfOuting } from './arrangement.ts';
import { type PlanOptions, planProgram } from './plan-program.ts';
import type { Part, Program } from './program.ts';

export interface Comparison {
  program: Program;
  changes: ArrangementChange[];
  /** outings that keep their content and their turn */
  kept: number;
  /** printed sheets whose outing changed or fell away: what stood on them, what stands there now, and why */
  printAgain: { before: string; after: string | null; because: string }[];
  /** printed outings that keep their content and get another number: write the new one on the sheet */
  renumbered: { before: string; after: string }[];
}

/** Outings that are on paper, by number. */
export type Printed = readonly number[];

/**
 * A plan beside the one before it.
 * @param before the plan as it stood, object
 * @param after the plan as it is to be, object
 * @param printed numbers of outings of the earlier plan that are printed, list
 * @returns what changes, what stays, and which sheets no longer hold
 */
export function comparePlans(before: Program, after: Program, printed: Printed = []): Comparison {
  const changes = compareArrangements(before, after);
  const paper = new Set(printed.flatMap((number) => before.outings[number - 1]?.title ?? []));
  const now = new Map(after.outings.map((outing) => [keyOfOuting(outing), outing.title]));
  const moved = new Set(changes.flatMap((change) => change.after ?? []));
  return {
    program: after,
    changes,
    kept: after.outings.filter((outing) => !moved.has(outing.title)).length,
    printAgain: changes.flatMap((change) =>
      (change.what === 'changed' || change.what === 'gone') && change.before !== null && paper.has(change.before)
        ? [{ before: change.before, after: change.after, because: change.words }]
        : [],
    ),
    renumbered: before.outings.flatMap((outing) => {
      const title = now.get(keyOfOuting(outing));
      return title !== undefined && title !== outing.title && paper.has(outing.title)
        ? [{ before: outing.title, after: title }]
        : [];
    }),
  };
}

/**
 * The program of an arrangement, taken as it is.
 * @param airplane the description, object
 * @param arrangement outings as lists of parts, list
 * @param options the options the program was made with, object
 * @returns the program
 */
export function programOfArrangement(
  airplane: Airplane,
  arrangement: readonly (readonly Part[])[],
  options: PlanOptions,
): Program {
  return planProgram(airplane, {
    ...options,
    arrangement: arrangement.filter((one) => one.length > 0),
    asItStands: true,
  });
}
