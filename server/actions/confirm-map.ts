/** Keep what a person confirmed about the columns of a log; it is offered again for files with the same header. */
import { type LogMap, mapSchema } from '../../analysis/logs/log-map.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import { readStoredLog, type StoredReading } from './read-stored-log.ts';

/**
 * @param map what was confirmed; anything that does not fit the schema is told field by field
 * @returns the log read by it
 * @throws InputProblem `bad-map`; what was confirmed before is kept then
 */
export async function confirmMap(
  desk: Desk,
  bookId: string,
  logId: string,
  map: unknown,
  by: By = {},
): Promise<StoredReading> {
  const reading = await readStoredLog(desk, bookId, logId, checkedMap(map));
  if (reading.outcome.problems.some((one) => one.code === 'bad-map')) throw new InputProblem(reading.outcome.problems);
  const book = desk.shelf.open(bookId);
  book.record({ kind: 'map-confirmed', log: logId, layout: reading.layout, map: reading.map }, by);
  return readStoredLog(desk, bookId, logId);
}

/** A map from JSON. */
export function checkedMap(json: unknown): LogMap {
  const read = mapSchema.safeParse(json);
  if (read.success) return read.data;
  throw new InputProblem(
    read.error.issues.map((issue) =>
      problem('bad-map', `${issue.path.map(String).join('.') || 'the map'}: ${issue.message}`, {
        field: issue.path.map(String).join('.'),
      }),
    ),
  );
}
