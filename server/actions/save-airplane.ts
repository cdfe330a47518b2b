/** Save an airplane's description as a new revision. What was stored before stays. */
import { readAirplane } from '../../analysis/airplane/index.ts';
import type { Problem } from '../../analysis/remarks/index.ts';
import { sha256Of } from '../book/documents.ts';
import type { By } from '../book/journal.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

/** A new revision, the same one when nothing changed, or the problems; nothing stored changes then. */
export type SavedAirplane =
  | { saved: true; revision: number; changed: boolean; problems: [] }
  | { saved: false; problems: Problem[] };

/**
 * @param json the whole description, as in AIRPLANE.json
 * @param by who, and why it changed
 */
export function saveAirplane(desk: Desk, bookId: string, json: unknown, by: By = {}): SavedAirplane {
  const book = desk.shelf.open(bookId);
  const { problems } = readAirplane(json);
  if (problems.length > 0) return { saved: false, problems };
  const now = airplaneOf(book);
  const text = JSON.stringify(json);
  if (sha256Of(text) === sha256Of(JSON.stringify(now.file))) {
    return { saved: true, revision: now.revision, changed: false, problems: [] };
  }
  book.recordWith((keep) => ({ kind: 'airplane-saved', document: keep(text) }), by);
  return { saved: true, revision: now.revision + 1, changed: true, problems: [] };
}
