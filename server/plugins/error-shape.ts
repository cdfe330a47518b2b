/** One JSON shape for every failure: `{ "problems": [{ code, message, mend, where }] }`, and the status that fits. */
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import * as z from 'zod';
import { InputProblem, type Problem, problem } from '../../analysis/remarks/index.ts';
import { problemSchema } from '../book/book-state.ts';

export const failureSchema = z.object({ problems: z.array(problemSchema).min(1) });

/** Codes with a status of their own; the others are a bad request. */
const STATUS: Partial<Record<Problem['code'], number>> = {
  'not-found': 404,
  'unknown-kind': 404,
  'book-in-use': 409,
  'not-movable': 409,
  'not-undoable': 409,
  'newer-book': 409,
  'too-large': 413,
  'refused-origin': 403,
  'too-many-requests': 429,
  'no-browser': 503,
  'print-failed': 503,
  'broken-journal': 500,
  'our-fault': 500,
};

/** The status of a failure: that of its first problem. */
export const statusOf = (problems: readonly Problem[]): number => STATUS[problems[0]?.code ?? 'our-fault'] ?? 400;

/** The problems an error amounts to. A fault of ours tells nothing about itself to the outside. */
export function problemsOf(error: unknown): Problem[] {
  if (error instanceof InputProblem) return [...error.problems];
  if (hasZodFastifySchemaValidationErrors(error)) {
    return error.validation.map((issue) => {
      const field = issue.instancePath.replace(/^\//, '').replaceAll('/', '.');
      return problem('bad-request', `${field || 'the request'}: ${issue.message}`, { field });
    });
  }
  const status = error instanceof Error && 'statusCode' in error ? Number(error.statusCode) : 500;
  const words = error instanceof Error ? error.message : 'something went wrong';
  if (status === 413) return [problem('too-large', 'The request is larger than allowed.')];
  if (status === 429) return [problem('too-many-requests', words)];
  if (status === 404) return [problem('not-found', words)];
  if (status >= 400 && status < 500) return [problem('bad-request', words)];
  return [problem('our-fault', 'The program made a mistake in answering this request.')];
}

/** Answer with the shape; also for pages, which have nothing better to show without their own handler. */
export function sendFailure(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const problems = problemsOf(error);
  const status = statusOf(problems);
  if (status === 500) request.log.error(error);
  return reply.code(status).type('application/json; charset=utf-8').send(JSON.stringify({ problems }));
}

/** Set it up for the whole service. */
export function errorShape(app: FastifyInstance): void {
  app.setErrorHandler(sendFailure);
  app.setNotFoundHandler((request, reply) => {
    const problems = [problem('not-found', `There is nothing at this address for ${request.method}.`)];
    return reply.code(404).type('application/json; charset=utf-8').send(JSON.stringify({ problems }));
  });
}
