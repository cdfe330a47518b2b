/** Limits of what is kept cool, and what to call it. */
import type { Airplane } from '../airplane/index.ts';
import type { CooledPart } from './hot-day.ts';

export interface PartLimits {
  caution: number | null;
  limit: number | null;
  /** hot restart only below this, coolant alone */
  restart: number | null;
}

export const PART_WORDS: Readonly<Record<CooledPart, string>> = {
  coolant: 'coolant',
  oil: 'oil',
  'cylinder-head': 'cylinder head',
  'cylinder-barrel': 'cylinder barrel',
};

/** Where the description keeps the limits of a part; barrels are held to those of the heads. */
export const LIMIT_FIELD = {
  coolant: 'coolant',
  oil: 'oil',
  'cylinder-head': 'cylinderHead',
  'cylinder-barrel': 'cylinderHead',
} as const satisfies Record<CooledPart, string>;

/**
 * Limits of a part.
 * @param airplane the description, or undefined
 * @param part name
 * @returns K, null where the description has none
 * @source the description itself: designer, maker or authority as entered there [memory]
 */
export function limitsOf(airplane: Airplane | undefined, part: CooledPart): PartLimits {
  const found = airplane?.limits[LIMIT_FIELD[part]];
  return {
    caution: found?.caution?.si ?? null,
    limit: found?.limit?.si ?? null,
    restart: part === 'coolant' ? (airplane?.limits.coolant.hotRestart?.si ?? null) : null,
  };
}
