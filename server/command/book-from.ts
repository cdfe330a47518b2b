/** The BOOK of the command line: a book's own folder, or a data folder that holds one. */
import { existsSync, readdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { type Book, isBook, openBookFolder } from '../book/book.ts';

/** @throws InputProblem when there is none, or several and none is named */
export function bookFrom(path: string): Book {
  const folder = resolve(path);
  if (isBook(folder)) return openBookFolder(folder, basename(folder), () => new Date());
  const inside = existsSync(folder) ? readdirSync(folder).filter((name) => isBook(join(folder, name))) : [];
  const [only, ...others] = inside;
  if (only !== undefined && others.length === 0) return bookFrom(join(folder, only));
  const words =
    only === undefined
      ? `${path} holds no book.`
      : `${path} holds ${inside.length} books: name one, such as ${join(path, only)}. There are ${inside.join(', ')}.`;
  throw new InputProblem([problem('not-found', words, { file: path })]);
}
