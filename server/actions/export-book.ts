/** The whole book as one zip, nothing lost. */
import type { Readable } from 'node:stream';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Book } from '../book/book.ts';
import { writeArchive } from '../book/write-archive.ts';
import type { Desk } from '../desk.ts';
import { verify } from './verify-book.ts';

export interface ExportedBook {
  /** a name for the file, of letters, digits and dashes only */
  fileName: string;
  stream: Readable;
}

/** @throws InputProblem `broken-journal`: a damaged book is not passed on as a whole one */
export async function exportBook(desk: Desk, bookId: string): Promise<ExportedBook> {
  return exportOpenBook(desk.shelf.open(bookId), desk.now());
}

/** The same for a book in a folder that is on no shelf. */
export async function exportOpenBook(book: Book, at: Date): Promise<ExportedBook> {
  const { broken } = await verify(book);
  if (broken.length > 0) throw new InputProblem(broken.map((what) => problem('broken-journal', `${what}.`)));
  return { fileName: `${book.id}-${at.toISOString().slice(0, 10)}.zip`, stream: await writeArchive(book, at) };
}
