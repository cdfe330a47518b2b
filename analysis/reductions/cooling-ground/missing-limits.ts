/** Limits of a ground run that are not there, and what that withholds. */
import type { Airplane } from '../../airplane/index.ts';
import { LIMIT_FIELD, limitsOf, PART_WORDS } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { HotTrace } from './trace.ts';

/**
 * Remarks on limits that are not there.
 * @param airplane the description, or undefined
 * @param part name
 * @returns what is withheld and where to enter it
 */
export function missingLimits(airplane: Airplane | undefined, part: HotTrace['part']): Flag[] {
  const { caution, limit, restart } = limitsOf(airplane, part);
  const field = `limits.${LIMIT_FIELD[part]}`;
  const say = (name: string, withheld: string) =>
    flag(
      'limit-missing',
      airplane
        ? `${airplane.name} has no ${PART_WORDS[part]} ${name} (field ${field}.${name}): ${withheld} withheld. Enter it with its source on the Airplane page`
        : `no airplane was given, so there is no ${PART_WORDS[part]} ${name}: ${withheld} withheld. Give the airplane with its limits`,
    );
  return [
    ...(limit === null ? [say('limit', 'time to the limit and every margin are')] : []),
    ...(caution === null && part !== 'oil' ? [say('caution', 'time to caution is')] : []),
    ...(restart === null && part === 'coolant'
      ? [say('hotRestart', 'the time until a hot restart is allowed is')]
      : []),
  ];
}
