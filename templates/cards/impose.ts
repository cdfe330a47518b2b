/**
 * Where each sheet lies on the paper. Two-up: the left halves are the first half of the pile and the right halves the
 * second, so that the pile is cut once and the right part laid under the left. Backs lie so that the paper is turned
 * over on its short edge, as a book page is.
 */
import type { Paper } from '../../analysis/cards/index.ts';
import { SHEETS } from '../../analysis/cards/index.ts';

export interface Place {
  /** page, from 1 */
  row: number;
  /** 1 left or only, 2 right */
  column: 1 | 2;
  back: boolean;
}

/**
 * Places for a pile of sheets, in the order of the pile; with backs each front is followed by its back.
 * @param sheets how many
 * @param paper paper form, text
 * @param backs true where each sheet has a printed back
 * @returns one place a side
 */
export function impose(sheets: number, paper: Paper, backs: boolean): Place[] {
  const perPage = SHEETS[paper].perPage;
  const leaves = Math.ceil(sheets / perPage);
  const sides = backs ? 2 : 1;
  return Array.from({ length: sheets }, (_, i) => {
    const right = i >= leaves;
    const row = sides * (right ? i - leaves : i) + 1;
    const front: Place = { row, column: right ? 2 : 1, back: false };
    if (!backs) return [front];
    const turned = perPage === 1 ? 1 : right ? 1 : 2;
    return [front, { row: row + 1, column: turned, back: true } satisfies Place];
  }).flat();
}

/** Pages a pile of sheets takes. */
export function pageCount(sheets: number, paper: Paper, backs: boolean): number {
  return Math.ceil(sheets / SHEETS[paper].perPage) * (backs ? 2 : 1);
}
