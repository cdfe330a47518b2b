/** What a verb makes, written to the file it was told. */
import { writeFile } from 'node:fs/promises';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';

/** @throws InputProblem `unwritable-file` */
export async function writeBytes(path: string, bytes: Uint8Array): Promise<void> {
  try {
    await writeFile(path, bytes);
  } catch (error) {
    throw new InputProblem([problem('unwritable-file', `${path} could not be written: ${String(error)}.`)]);
  }
}
