/** Limits of a climb's temperatures that are not there, and what that withholds. */
import type { Airplane } from '../../airplane/index.ts';
import { LIMIT_FIELD, PART_WORDS } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { Answer } from './answer.ts';

/**
 * One remark for each kind of part without a limit or a caution.
 * @param answers of all climbs, list
 * @param airplane the description, or undefined
 * @returns flags that say where to enter it
 */
export function missingLimits(answers: readonly Answer[], airplane: Airplane | undefined): Flag[] {
  const parts = [...new Set(answers.map((one) => one.course.part))];
  return parts.flatMap((part) => {
    const limits = answers.find((one) => one.course.part === part)?.limits;
    const say = (name: string, withheld: string) =>
      flag(
        'limit-missing',
        airplane
          ? `${airplane.name} has no ${PART_WORDS[part]} ${name} (field limits.${LIMIT_FIELD[part]}.${name}): ${withheld} withheld. Enter it with its source on the Airplane page`
          : `no airplane was given, so there is no ${PART_WORDS[part]} ${name}: ${withheld} withheld. Give the airplane with its limits`,
      );
    return [
      ...(limits?.limit === null ? [say('limit', 'the margin is')] : []),
      ...(limits?.caution === null ? [say('caution', 'the comparison with it is')] : []),
    ];
  });
}
