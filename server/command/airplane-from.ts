/** The airplane named on the command line. */
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import { InputProblem } from '../../analysis/remarks/index.ts';
import { readJson } from './read-json.ts';
import type { Io } from './verb.ts';

/** @throws InputProblem when the file cannot be read or does not fit the schema */
export async function airplaneFrom(path: string, io: Io): Promise<Airplane> {
  const { airplane, problems } = readAirplane(await readJson(path, 'bad-configuration', io), path);
  if (!airplane) throw new InputProblem(problems);
  return airplane;
}
