/** Outside data through their schema, or a problem that names the field. */
import type * as z from 'zod';
import type { CodeOf } from './codes.ts';
import { InputProblem, problem } from './remark.ts';

/**
 * Parse by a schema.
 * @param schema what is expected, zod schema
 * @param value what came, anything
 * @param code problem code of this border, text
 * @returns the parsed value
 * @throws InputProblem naming each field that does not fit
 */
export function parsedBy<T extends z.ZodType>(schema: T, value: unknown, code: CodeOf<'problem'>): z.output<T> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new InputProblem(
    parsed.error.issues.map((issue) => {
      const field = issue.path.map(String).join('.');
      return problem(code, `${field || 'the whole'}: ${issue.message}`, { field });
    }),
  );
}
