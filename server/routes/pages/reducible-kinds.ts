/** Which reductions take the figures of a test's card. */
import { KINDS_FROM_CARDS } from '../../../analysis/cards/index.ts';
import { REDUCTIONS } from '../../../analysis/reductions/index.ts';

/** Kinds that serve a test and read its card, in the order of the registry. */
export function reducibleKinds(test: string): string[] {
  return REDUCTIONS.filter((one) => one.serves.includes(test) && KINDS_FROM_CARDS.includes(one.kind)).map(
    (one) => one.kind,
  );
}
