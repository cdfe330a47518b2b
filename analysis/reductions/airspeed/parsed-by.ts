/** Outside data through their schema, or a problem that names the field. */
import type * as z from 'zod';
import { type CodeOf, InputProblem, problem } from '../../remarks/index.ts';

/**
 * Parse by a schema.
 * @param schema what is expected
 * @param value what came
 * @param code problem code of this border, text
 * @returns the parsed value
 * @throws InputProblem naming each field that does not fit
 */
export function parsedBy<T extends z.ZodType>(schema: T, value: unknown, code: CodeOf<'problem'>): z.output<T> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new InputProblem(
    parsed.error.issues.map((issue) =>
      problem(code, `${issue.path.join('.')}: ${issue.message}`, { field: issue.path.join('.') }),
    ),
  );
}
