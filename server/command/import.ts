/** `proveout import`: a whole book out of one file. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { importBook } from '../actions/import-book.ts';
import { openDesk } from '../desk.ts';
import { settingsOf } from '../settings.ts';
import { printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';

export const importVerb: Verb = {
  help: `proveout import FILE.zip [--data DIR] [--json]

Takes an exported book in as a new one, checked file by file. DIR is the folder that holds the books.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, { data: { type: 'string' } });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new WrongUsage('one FILE.zip is wanted.');
    if (!existsSync(path)) {
      throw new InputProblem([problem('unreadable-file', `${path}: there is no such file.`, { file: path })]);
    }
    const settings = settingsOf(values.data === undefined ? {} : { dataFolder: resolve(values.data) });
    const desk = openDesk({ settings });
    try {
      const taken = await importBook(desk, path);
      const folder = join(settings.dataFolder, taken.id);
      if (values.json) printJson(io, { ...taken, folder });
      else printLines(io, [`${folder}: ${taken.entries} journal entries, ${taken.logs} logs`]);
    } finally {
      await desk.close();
    }
    return 0;
  },
};
