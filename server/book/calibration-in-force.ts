/**
 * The airspeed calibration that reductions of a book go by: of the airspeed results accepted and still standing, the
 * one accepted last. Nothing is stored for it: it follows from the decisions, so that taking one back or undoing it
 * brings the one before into force again.
 */
import { type Result, resultSchema } from '../../analysis/results/index.ts';
import type { Book } from './book.ts';
import { changedSince } from './changed-since.ts';
import * as rows from './current-state.ts';
import { understanding } from './documents.ts';

const resultIn = understanding((json) => resultSchema.parse(json));

/**
 * @param without number of a result to leave out of account: what would be in force if it were not accepted
 * @returns number of the airspeed result, or null
 */
export async function calibrationInForce(book: Book, without?: number): Promise<number | null> {
  const accepted = rows
    .results(book.database)
    .filter((row) => row.reduction === 'airspeed' && row.decision === 'accepted' && !row.away && row.number !== without)
    .sort((a, b) => (b.decided ?? 0) - (a.decided ?? 0));
  for (const row of accepted) {
    const result = resultIn(book.database, row.document);
    if (result.status === 'reduced' && (await changedSince(book, row, result)).length === 0) return row.number;
  }
  return null;
}

/**
 * Whether the calibration in force is the one a result went by.
 * @param row the result as recorded
 * @param result the result itself
 * @param inForce number of the airspeed result that reductions go by, or null
 * @returns one sentence when it is not; null when it is, when the kind needs none, or when none was wanted
 */
export async function calibrationReason(
  row: rows.ResultRow,
  result: Result,
  inForce: number | null,
): Promise<string | null> {
  const { reductionOf } = await import('../../analysis/reductions/index.ts');
  const used = row.input.calibration;
  // null: a person wanted none, which a later one does not change
  if (!reductionOf(row.reduction)?.usesCalibration || result.status === 'refused' || used === null) return null;
  if (used === inForce || (used === undefined && inForce === null)) return null;
  if (used === undefined)
    return `It was reduced without an airspeed calibration; result ${inForce} is the accepted one now.`;
  if (inForce === null) return `Result ${used}, the airspeed calibration under it, is not accepted any more.`;
  return `It rests on result ${used} as its airspeed calibration; result ${inForce} is the accepted one now.`;
}
