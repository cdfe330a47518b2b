/** Where an outing's page stands; its name is the one on its cards. */
import { bookPath } from '../parts/frame.view.ts';

export { outingName } from '../../analysis/cards/index.ts';

/** Address of an outing's page. */
export function outingPath(book: string, number: number): string {
  return bookPath(book, `/outings/${number}`);
}
