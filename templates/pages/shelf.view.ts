/** The shelf: whose book is to be opened. */
import * as z from 'zod';
import type { Problem } from '../../analysis/remarks/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { problemPart, problemsInWords } from '../parts/remarks.view.ts';

const bookPart = z.strictObject({
  name: z.string(),
  registration: z.string(),
  href: z.string(),
  problems: z.array(problemPart),
});

export const shelfView = z.strictObject({ frame: framePart, own: z.array(bookPart), demo: z.array(bookPart) });
export type ShelfView = z.infer<typeof shelfView>;

export interface ShelvedBook {
  id: string;
  name: string;
  registration: string;
  demo: boolean;
  problems: readonly Problem[];
}

/** All books, the person's own first. */
export function shelfPage(books: readonly ShelvedBook[], done = ''): ShelfView {
  const part = ({ id, name, registration, problems }: ShelvedBook) => ({
    name,
    registration,
    href: bookPath(id),
    problems: problemsInWords(problems),
  });
  return {
    frame: frameOf('Whose airplane?', {
      question: 'One book holds one airplane’s whole record, from the shop to the sign-off.',
      done,
    }),
    own: books.filter((one) => !one.demo).map(part),
    demo: books.filter((one) => one.demo).map(part),
  };
}
