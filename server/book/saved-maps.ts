/** Maps that people confirmed, the newest for each layout of columns. */
import type { Book } from './book.ts';
import type { SavedMap } from './book-state.ts';
import { logs } from './current-state.ts';

export function savedMaps(book: Book): SavedMap[] {
  const byLayout = new Map<string, SavedMap>();
  const confirmed = logs(book.database).sort((a, b) => (a.mapped ?? 0) - (b.mapped ?? 0));
  for (const { sha256, name, layout, map } of confirmed) {
    if (layout !== null && map !== null) byLayout.set(layout, { layout, map, log: sha256, logName: name });
  }
  return [...byLayout.values()];
}
