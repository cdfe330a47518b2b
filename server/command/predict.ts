/** `proveout predict`: what a result says of other conditions, with its interval. */

import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { predictFrom } from '../actions/predict.ts';
import { knownKind } from './known-kind.ts';
import { readJson } from './read-json.ts';
import { resultFrom } from './result-from.ts';
import { complain, printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';

export const predict: Verb = {
  help: `proveout predict KIND RESULT.json --at CONDITIONS.json [--json]

What a result (the JSON of "proveout reduce KIND --json") predicts for other conditions, with the interval for the
next run. One of the two files may be "-".
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, { at: { type: 'string' } });
    const [kind, path, ...more] = positionals;
    if (kind === undefined || path === undefined || more.length > 0)
      throw new WrongUsage('KIND and RESULT.json are wanted.');
    if (values.at === undefined) throw new WrongUsage('--at CONDITIONS.json is wanted.');
    await knownKind(kind);
    const result = await resultFrom(path, io);
    if (result.kind !== kind) {
      throw new InputProblem([problem('bad-request', `${path} holds a ${result.kind} result, not ${kind}.`)]);
    }
    const prediction = await predictFrom(result, await readJson(values.at, 'bad-request', io));
    if (values.json) printJson(io, prediction);
    else printLines(io, (await import('./result-words.ts')).predictionWords(prediction));
    if (prediction.status === 'predicted') return 0;
    complain(io, prediction.reason ?? 'this cannot be predicted.');
    return 1;
  },
};
