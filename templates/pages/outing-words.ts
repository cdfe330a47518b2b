/** Where an outing's page stands; its name is the one on its cards. */
import { outingName } from '../../analysis/cards/index.ts';
import type { Outing, Program } from '../../analysis/program/index.ts';
import { bookPath } from '../parts/frame.view.ts';

export { outingName };

/** Address of an outing's page. */
export function outingPath(book: string, number: number): string {
  return bookPath(book, `/outings/${number}`);
}

/** An outing by its name and what is done on it; a flight's title names it already. */
export function titled(outing: Outing, program: Program): string {
  const name = outingName(outing, program);
  return outing.title.startsWith(name) ? outing.title : `${name}: ${outing.title}`;
}
