/** Reduce what was written on a card: the same reductions as for logs, with the card as the source. */

import { stated } from '../../analysis/airplane/index.ts';
import { type CardPoints, entryFields, pointsOfCard, sheetsOfBoxes } from '../../analysis/cards/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { paperSchema } from '../../templates/cards/options.ts';
import { readingsOf } from '../../templates/cards/written-readings.ts';
import type { StoredResult } from '../book/book-state.ts';
import type { By } from '../book/journal.ts';
import { airplaneOf } from '../book/read-state.ts';
import { type WrittenCard, writtenCard } from '../book/written-cards.ts';
import type { Desk } from '../desk.ts';
import { reduce } from './reduce.ts';

export interface WrittenReduction {
  kind: string;
  options?: Record<string, unknown> | undefined;
}

/** The sets of points a written card gives, with what was left out. */
export function pointsOfWritten(
  desk: Desk,
  bookId: string,
  written: WrittenCard,
  { kind, options = {} }: WrittenReduction,
): CardPoints[] {
  const { parsed, problems } = airplaneOf(desk.shelf.open(bookId));
  if (!parsed) throw new InputProblem(problems);
  const mass = stated('mass').safeParse(options.startMass);
  return pointsOfCard(
    written.card,
    readingsOf(written.card, texts(written)),
    kind,
    parsed,
    mass.success ? mass.data.si : null,
  );
}

/**
 * @returns a stored result for each set of points: flap settings whose rates must not be mixed are apart
 * @throws InputProblem `not-found`, `bad-points` where nothing can be reduced, or what the reduction refuses to read
 */
export async function reduceWritten(
  desk: Desk,
  bookId: string,
  number: number,
  wanted: WrittenReduction,
  by: By = {},
): Promise<{ stored: StoredResult[]; remarks: string[] }> {
  const written = writtenCard(desk.shelf.open(bookId), number);
  const sets = pointsOfWritten(desk, bookId, written, wanted);
  const full = sets.filter((set) => set.points.length > 0);
  const remarks = sets.flatMap((set) => set.remarks);
  if (full.length === 0) {
    const why = remarks.join(' ') || 'None of its boxes is what this reduction takes.';
    throw new InputProblem([problem('bad-points', `Nothing on this card can be reduced yet. ${why}`)]);
  }
  const { card } = written;
  const stored: StoredResult[] = [];
  for (const set of full) {
    try {
      const answer = await reduce(
        desk,
        bookId,
        {
          kind: set.kind,
          logs: [],
          points: { kind: set.kind, points: set.points.map((one) => one.point) },
          tests: [card.id],
          ...(wanted.options ? { options: wanted.options } : {}),
          card: {
            number,
            test: card.id,
            title: card.title,
            revision: card.identity.revision,
            printed: card.identity.printed,
            sheets: sheetsUsed(written, set),
          },
        },
        by,
      );
      if (answer.answer === 'stored') stored.push(answer.stored);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      throw new InputProblem(error.problems.map((one) => atItsBox(one, set)));
    }
  }
  return { stored, remarks };
}

/** A problem of a point's figure told at the box it stands in. */
function atItsBox(one: InputProblem['problems'][number], set: CardPoints): InputProblem['problems'][number] {
  const [, index, name] = /^points\.(\d+)\.([^.]+)/.exec(one.where.field ?? '') ?? [];
  const key = index === undefined || name === undefined ? undefined : set.points[Number(index)]?.from[name];
  return key === undefined ? one : { ...one, where: { ...one.where, field: key } };
}

function sheetsUsed(written: WrittenCard, set: CardPoints): number[] {
  const paper = paperSchema.safeParse(written.paper);
  const places = sheetsOfBoxes(written.card, paper.success ? paper.data : 'half-letter');
  const sheets = new Set(set.points.flatMap((one) => Object.values(one.from).flatMap((key) => places.get(key) ?? [])));
  return [...sheets].sort((a, b) => a - b);
}

function texts(written: WrittenCard): Record<string, string> {
  const known = new Set(entryFields(written.card).order);
  return Object.fromEntries(
    Object.entries(written.boxes).flatMap(([key, { text }]) => (known.has(key) ? [[key, text] as const] : [])),
  );
}
