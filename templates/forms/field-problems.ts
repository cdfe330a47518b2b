/** Problems of a description sorted to the fields of a form: what stands at a field is said there. */
import type { Problem } from '../../analysis/remarks/index.ts';
import { type ProblemPart, problemsInWords } from '../parts/remarks.view.ts';
import type { FieldProblem } from './airplane-form.ts';

/**
 * @param problems as reading the description gives them
 * @returns those of a field, and the others
 */
export function fieldProblems(problems: readonly Problem[]): { problems: FieldProblem[]; others: ProblemPart[] } {
  const placed = problems.filter((one) => (one.where.field ?? '') !== '');
  return {
    problems: placed.map(({ message, where }) => ({
      path: where.field ?? '',
      message: plain(message, where.field ?? ''),
    })),
    others: problemsInWords(problems.filter((one) => !placed.includes(one))),
  };
}

/** The message without the file and the path before it: at the field both are plain. */
function plain(message: string, field: string): string {
  const at = message.indexOf(`${field}: `);
  const rest = at < 0 ? message : message.slice(at + field.length + 2);
  return /expected (number|string|object|array|boolean), received undefined$/.test(rest) ||
    /expected string to have >=1/.test(rest)
    ? 'This is needed.'
    : rest;
}
