/** A result named on the command line. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { type Result, resultSchema } from '../../analysis/results/index.ts';
import { readJson } from './read-json.ts';
import type { Io } from './verb.ts';

/** @throws InputProblem when the file cannot be read or holds no result */
export async function resultFrom(path: string, io: Io): Promise<Result> {
  const read = resultSchema.safeParse(await readJson(path, 'bad-request', io));
  if (read.success) return read.data;
  throw new InputProblem(
    read.error.issues.map((issue) => {
      const field = issue.path.map(String).join('.');
      return problem('bad-request', `${path} is no result: ${field || 'the whole'}: ${issue.message}`, {
        file: path,
        field,
      });
    }),
  );
}
