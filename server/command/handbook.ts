/** `proveout handbook`: said plainly where it is not there yet. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { readArguments, type Verb, WrongUsage } from './verb.ts';

export const handbook: Verb = {
  help: `proveout handbook BOOK --out FILE.pdf [--json]

The handbook and the record of phase one from a book. This version cannot make it yet.
`,
  run: async (argv) => {
    const { values, positionals } = readArguments(argv, { out: { type: 'string' } });
    if (positionals.length !== 1 || values.out === undefined) throw new WrongUsage('one BOOK and --out are wanted.');
    throw new InputProblem([problem('not-built', 'The handbook cannot be made yet.')]);
  },
};
