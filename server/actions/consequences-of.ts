/** What a decision on an airspeed result would do to others, told before it is made. */
import { resultSchema } from '../../analysis/results/index.ts';
import { calibrationInForce, calibrationReason } from '../book/calibration-in-force.ts';
import { changedSince } from '../book/changed-since.ts';
import * as rows from '../book/current-state.ts';
import { understanding } from '../book/documents.ts';
import type { Desk } from '../desk.ts';
import { resultOf } from './result-of.ts';

/** A result that a decision touches. */
export interface TouchedResult {
  number: number;
  kind: string;
  /** why it would no longer stand; empty for one that would stand again */
  because: string;
}

export interface Consequence {
  /** number of the airspeed result that reductions would go by */
  inForce: number | null;
  stale: TouchedResult[];
  standAgain: TouchedResult[];
}

export interface Consequences {
  /** the airspeed result that reductions go by now, or null */
  inForce: number | null;
  /** of accepting it; null where there is nothing to accept, or it is in force already */
  accepting: Consequence | null;
  /** of taking its acceptance back; null where it is not in force */
  takingBack: Consequence | null;
}

const resultIn = understanding((json) => resultSchema.parse(json));

/**
 * @returns what would change for other results; nothing for a kind that no other one rests on
 * @throws InputProblem `not-found`
 */
export async function consequencesOf(desk: Desk, bookId: string, number: number): Promise<Consequences> {
  const book = desk.shelf.open(bookId);
  const { kind, result, status } = await resultOf(desk, bookId, number);
  const inForce = await calibrationInForce(book);
  if (kind !== 'airspeed' || result.status === 'refused') return { inForce, accepting: null, takingBack: null };
  // one that is stale itself would be accepted and still not be gone by
  const couldServe = status !== 'stale' && inForce !== number;
  const consequence = async (then: number | null): Promise<Consequence> => {
    const stale: TouchedResult[] = [];
    const standAgain: TouchedResult[] = [];
    for (const row of rows.results(book.database)) {
      if (row.away || row.decision === 'repeat' || row.number === number) continue;
      const its = resultIn(book.database, row.document);
      const [before, after] = [await calibrationReason(row, its, inForce), await calibrationReason(row, its, then)];
      if ((before === null) === (after === null) || (await changedSince(book, row, its)).length > 0) continue;
      (after === null ? standAgain : stale).push({ number: row.number, kind: row.reduction, because: after ?? '' });
    }
    return { inForce: then, stale, standAgain };
  };
  return {
    inForce,
    accepting: couldServe ? await consequence(number) : null,
    takingBack: inForce === number ? await consequence(await calibrationInForce(book, number)) : null,
  };
}
