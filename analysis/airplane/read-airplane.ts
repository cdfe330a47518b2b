/** Reading an airplane's description at the border: zod's issues turned into problems that say what, where and how. */
import type * as z from 'zod';
import { type Problem, problem } from '../remarks/index.ts';
import { type Airplane, airplaneSchema } from './configuration.ts';

export type ReadAirplane = { airplane: Airplane; problems: [] } | { airplane: null; problems: Problem[] };

/**
 * An airplane from parsed JSON.
 * @param json anything, object
 * @param file its name for the messages, text
 * @returns the airplane, or the problems with field paths
 */
export function readAirplane(json: unknown, file = 'airplane'): ReadAirplane {
  const read = airplaneSchema.safeParse(json);
  if (read.success) return { airplane: read.data, problems: [] };
  return { airplane: null, problems: read.error.issues.map((issue) => fromIssue(issue, file)) };
}

function fromIssue(issue: z.core.$ZodIssue, file: string): Problem {
  const field = issue.path.map(String).join('.');
  return problem('bad-configuration', `${file}: ${field || 'the whole'}: ${issue.message}`, { file, field });
}
