/** Read a log of a book: with the map given, else the one confirmed for it, else the one saved for its layout. */
import type { LogMap, ReadOutcome } from '../../analysis/logs/index.ts';
import type { StoredLog } from '../book/book-state.ts';
import { mapForLayout } from '../book/current-state.ts';
import type { Desk } from '../desk.ts';
import { layoutOf } from './layout-of.ts';
import { logOf } from './log-of.ts';
import { readCached } from './read-cached.ts';

export interface StoredReading {
  log: StoredLog;
  outcome: ReadOutcome;
  /** what the columns were read by, and where it comes from */
  map: LogMap | null;
  mapFrom: 'given' | 'confirmed' | 'saved' | 'none';
  /** the log on which a saved map was confirmed */
  savedOn: string | null;
  layout: string | null;
}

/**
 * @param given a map to try without keeping it
 * @param signal stops the reading
 */
export async function readStoredLog(
  desk: Desk,
  bookId: string,
  logId: string,
  given?: LogMap,
  signal?: AbortSignal,
): Promise<StoredReading> {
  const { log, path } = logOf(desk, bookId, logId);
  const read = (map: LogMap | null) => readCached(desk, desk.shelf.open(bookId).folder, path, log, map, signal);
  const answer = (outcome: ReadOutcome, map: LogMap | null, mapFrom: StoredReading['mapFrom'], savedOn = '') => ({
    log,
    outcome,
    map,
    mapFrom,
    savedOn: savedOn === '' ? null : savedOn,
    layout: layoutOf(outcome),
  });
  if (given) return answer(await read(given), given, 'given');
  if (log.map) return answer(await read(log.map), log.map, 'confirmed');

  const plain = await read(null);
  const layout = layoutOf(plain);
  const saved = layout === null ? undefined : mapForLayout(desk.shelf.open(bookId).database, layout);
  if (!saved) return answer(plain, null, 'none');
  const map = withoutDate(saved.map);
  const outcome = await read(map);
  // a map that does not fit this file after all is not forced on it
  return outcome.accepted === 'no' && plain.accepted !== 'no'
    ? answer(plain, null, 'none')
    : answer(outcome, map, 'saved', saved.name);
}

/** The day belongs to one file; the rest of a map belongs to its layout. */
function withoutDate(map: LogMap): LogMap {
  if (!map.time) return map;
  const { date: _, ...time } = map.time;
  return { ...map, time };
}
