/**
 * Undo an entry of the journal by a new one that sets back what it changed. Only the last entry about a subject can
 * be undone: what came after it would lose its ground.
 */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Entry, Happening } from '../book/entry.ts';
import { type By, entriesOn, entryNumber } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

/**
 * @param seq number of the entry
 * @returns the new entry
 * @throws InputProblem `not-found` or `not-undoable`
 */
export function undo(desk: Desk, bookId: string, seq: number, by: By = {}): Entry {
  const book = desk.shelf.open(bookId);
  const entry = entryNumber(book.database, seq);
  if (!entry) throw new InputProblem([problem('not-found', `The journal has no entry ${seq}.`)]);
  const onSubject = entriesOn(book.database, entry.subject);
  if (onSubject.at(-1)?.seq !== seq) {
    throw refuse(`Entry ${seq} is not the last one about its subject; entry ${onSubject.at(-1)?.seq} came after it.`);
  }
  const decision = entriesOn(book.database, entry.subject.replace(/^result:/, 'decision:')).at(-1)?.happening;
  if (entry.happening.kind === 'result-reduced' && decision?.kind === 'result-decided') {
    if (decision.decision === 'accepted') throw refuse('The result is accepted; take that back first.');
  }
  if (entry.happening.kind === 'readings-written') {
    const before = boxesBefore(onSubject.slice(0, -1).map((one) => one.happening));
    const boxes = Object.fromEntries(Object.keys(entry.happening.boxes).map((key) => [key, before[key] ?? '']));
    return book.record({ ...entry.happening, boxes, undoes: seq }, { ...by, why: by.why ?? `Undo of entry ${seq}` });
  }
  return book.record(inverseOf(entry, onSubject.at(-2)?.happening), { ...by, why: by.why ?? `Undo of entry ${seq}` });
}

/** What sets back an entry, given what was said of its subject before. */
function inverseOf({ seq, subject, happening }: Entry, before: Happening | undefined): Happening {
  const undoes = seq;
  switch (happening.kind) {
    case 'airplane-saved':
      if (before?.kind !== 'airplane-saved') throw refuse('The first description has nothing before it.');
      return { ...before, undoes };
    case 'map-confirmed':
      return { ...happening, map: before?.kind === 'map-confirmed' ? before.map : null, undoes };
    case 'log-aligned':
      return { ...happening, seconds: before?.kind === 'log-aligned' ? before.seconds : null, undoes };
    case 'result-decided':
      return before?.kind === 'result-decided'
        ? { ...before, undoes }
        : { ...happening, decision: 'proposed', note: '', undoes };
    case 'test-marked':
      return before?.kind === 'test-marked'
        ? { ...before, undoes }
        : { ...happening, mark: 'planned', note: '', undoes };
    case 'program-arranged':
      return before?.kind === 'program-arranged'
        ? { ...before, again: [], undoes }
        : { ...happening, document: null, again: [], words: 'As worked out from the airplane.', undoes };
    case 'own-test-saved':
      return before?.kind === 'own-test-saved' ? { ...before, undoes } : { ...happening, document: null, undoes };
    case 'test-left-out':
      return before?.kind === 'test-left-out'
        ? { ...before, undoes }
        : { ...happening, out: false, reason: '', instead: '', undoes };
    case 'squawk-settled':
      return before?.kind === 'squawk-settled' ? { ...before, undoes } : { ...happening, open: true, how: '', undoes };
    case 'log-received':
    case 'result-reduced':
    case 'squawk-opened':
    case 'hours-logged':
    case 'outing-noted':
    case 'brought-back':
      return { kind: 'put-away', subject, undoes };
    case 'put-away':
      return { kind: 'brought-back', subject, undoes };
    case 'book-created':
    case 'readings-written':
    case 'cards-printed':
    case 'outings-printed':
      throw refuse('This happened in the world; it stays in the journal.');
  }
}

/** What stood in the boxes of a card, after all that was written into it. */
function boxesBefore(happenings: readonly Happening[]): Record<string, string> {
  return Object.assign({}, ...happenings.map((one) => (one.kind === 'readings-written' ? one.boxes : {})));
}

function refuse(message: string): InputProblem {
  return new InputProblem([problem('not-undoable', message)]);
}
