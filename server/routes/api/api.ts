/** What every route of the API is built with, and the words that most of them share. */
import type {
  FastifyBaseLogger,
  FastifyInstance,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import * as z from 'zod';
import type { Desk } from '../../desk.ts';
import type { InWork } from '../../plugins/in-work.ts';

export type Api = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ZodTypeProvider
>;

export interface Service {
  desk: Desk;
  inWork: InWork;
}

/** Who does it and why, in their words; kept in the journal. */
export const bySchema = z.object({ who: z.string().max(80).optional(), why: z.string().max(1000).optional() });

export const bookParams = z.object({ book: z.string() });
export const logParams = bookParams.extend({ log: z.string() });
export const numberParams = bookParams.extend({ number: z.coerce.number().int().positive() });

/** The answer of a deed that has nothing to say. */
export const nothing = { 204: z.null() };

/** The answer of a deed that makes something with a number. */
export const numbered = z.object({ number: z.int() });
