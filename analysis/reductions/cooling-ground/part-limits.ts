/** Limits of what is kept cool, and what to call it. */
import type { Airplane } from '../../airplane/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { HotTrace } from './trace.ts';

export interface PartLimits {
  caution: number | null;
  limit: number | null;
  /** hot restart only below this, coolant alone */
  restart: number | null;
}

export const PART_WORDS: Readonly<Record<HotTrace['part'], string>> = {
  coolant: 'coolant',
  oil: 'oil',
  'cylinder-head': 'cylinder head',
};

const FIELD = { coolant: 'coolant', oil: 'oil', 'cylinder-head': 'cylinderHead' } as const;

/**
 * Limits of a part.
 * @param airplane the description, or undefined
 * @param part name
 * @returns K, null where the description has none
 */
export function limitsOf(airplane: Airplane | undefined, part: HotTrace['part']): PartLimits {
  const found = airplane?.limits[FIELD[part]];
  return {
    caution: found?.caution?.si ?? null,
    limit: found?.limit?.si ?? null,
    restart: part === 'coolant' ? (airplane?.limits.coolant.hotRestart?.si ?? null) : null,
  };
}

/**
 * Remarks on limits that are not there.
 * @param airplane the description, or undefined
 * @param part name
 * @returns what is withheld and where to enter it
 */
export function missingLimits(airplane: Airplane | undefined, part: HotTrace['part']): Flag[] {
  const { caution, limit, restart } = limitsOf(airplane, part);
  const field = `limits.${FIELD[part]}`;
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
