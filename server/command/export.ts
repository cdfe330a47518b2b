/** `proveout export`: a whole book into one file. */
import { createWriteStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { exportOpenBook } from '../actions/export-book.ts';
import { bookFrom } from './book-from.ts';
import { printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';

export const exportVerb: Verb = {
  help: `proveout export BOOK --out FILE.zip [--json]

The whole book as plain JSON and original files, nothing lost. BOOK is its folder, or a data folder that holds one.
A book that the service has open is exported from its page.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, { out: { type: 'string' } });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0 || values.out === undefined) {
      throw new WrongUsage('one BOOK and --out FILE.zip are wanted.');
    }
    const book = bookFrom(path);
    try {
      const { stream } = await exportOpenBook(book, new Date());
      await pipeline(stream, createWriteStream(values.out));
    } finally {
      book.close();
    }
    const { size } = await stat(values.out);
    if (values.json) printJson(io, { file: values.out, size, sizeUnit: 'B' });
    else printLines(io, [`${values.out}: ${size} bytes`]);
    return 0;
  },
};
