/** Why a result no longer stands: what changed under it, or the airspeed calibration it went by is not the one in force. */
import type { Result } from '../../analysis/results/index.ts';
import type { Book } from './book.ts';
import { calibrationReason } from './calibration-in-force.ts';
import { changedSince } from './changed-since.ts';
import type * as rows from './current-state.ts';

/**
 * @param row the result as recorded
 * @param result the result itself
 * @param inForce number of the airspeed result that reductions go by, or null
 * @returns one sentence a reason; none when it stands
 */
export async function staleReasons(
  book: Book,
  row: rows.ResultRow,
  result: Result,
  inForce: number | null,
): Promise<string[]> {
  const reason = await calibrationReason(row, result, inForce);
  return [...(await changedSince(book, row, result)), ...(reason === null ? [] : [reason])];
}
