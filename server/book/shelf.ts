/** The books in the data folder, opened when first asked for and held until the service stops. */
import { randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { BOOK_ID, type Book, isBook, openBookFolder } from './book.ts';

export interface Shelf {
  folder: string;
  /** ids of the books there are */
  ids(): string[];
  /** an existing book */
  open(id: string): Book;
  /** a new one, under this id or a fresh one */
  make(id?: string): Book;
  /** an id that no book has */
  freshId(): string;
  close(): void;
}

/**
 * The shelf of a data folder, made when absent.
 * @param folder the data folder
 * @param now the clock
 */
export function openShelf(folder: string, now: () => Date): Shelf {
  mkdirSync(folder, { recursive: true });
  sweepImports(folder, now());
  const held = new Map<string, Book>();
  const hold = (id: string) => {
    const book = held.get(id) ?? openBookFolder(join(folder, id), id, now);
    held.set(id, book);
    return book;
  };
  const there = (id: string) => BOOK_ID.test(id) && isBook(join(folder, id));

  const shelf: Shelf = {
    folder,
    ids: () => readdirSync(folder).filter(there).sort(),
    open: (id) => {
      if (!there(id)) throw new InputProblem([problem('not-found', 'There is no such book.')]);
      return hold(id);
    },
    make: (id = shelf.freshId()) => {
      if (!BOOK_ID.test(id)) throw new Error(`"${id}" is no name for a book's folder`);
      if (there(id)) throw new Error(`there is a book "${id}" already`);
      return hold(id);
    },
    freshId: () => {
      const id = `book-${randomBytes(5).toString('hex')}`;
      return there(id) ? shelf.freshId() : id;
    },
    close: () => {
      for (const book of held.values()) book.close();
      held.clear();
    },
  };
  return shelf;
}

const A_DAY = 24 * 3600 * 1000;

/** What an import left behind that was killed; a younger one may still be in work in another process. */
function sweepImports(folder: string, now: Date): void {
  for (const name of readdirSync(folder).filter((one) => one.startsWith('.import-'))) {
    const path = join(folder, name);
    if (now.getTime() - statSync(path).mtimeMs > A_DAY) rmSync(path, { recursive: true, force: true });
  }
}
