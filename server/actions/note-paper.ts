/** Which outings lie on paper whole: a new plan then changes the least of them, and says which sheets no longer hold. */
import type { Selection } from '../../analysis/cards/index.ts';
import type { Outing, Program } from '../../analysis/program/index.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

/** Note the outings that a selection of cards prints whole; a single card prints none. */
export function notePaper(desk: Desk, bookId: string, program: Program, selection: Selection, by: By = {}): void {
  const outings = program.outings
    .filter((outing) => isWhole(outing, selection))
    .map(({ title, parts }) => ({
      title: title.slice(0, 400),
      parts: parts.map(({ test, part }) => ({ test, part })),
    }));
  if (outings.length > 0) desk.shelf.open(bookId).record({ kind: 'outings-printed', outings }, by);
}

function isWhole(outing: Outing, selection: Selection): boolean {
  switch (selection.kind) {
    case 'all':
      return true;
    case 'outing':
      return outing.number === selection.number;
    case 'flight':
      return outing.flight === selection.number;
    case 'stage':
      return outing.stage === selection.stage;
    case 'card':
      return false;
  }
}
