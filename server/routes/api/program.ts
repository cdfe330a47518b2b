/** The sequenced program, of a book's airplane or of a description sent along. */
import * as z from 'zod';
import { programOf, programOfDescription } from '../../actions/program-of.ts';
import { type Api, bookParams, type Service } from './api.ts';
import { programSchema } from './program-answer.ts';

export function programRoutes(api: Api, { desk }: Service): void {
  api.get(
    '/books/:book/program',
    { schema: { params: bookParams, response: { 200: programSchema } } },
    async ({ params }) => programOf(desk, params.book),
  );
  api.post('/program', { schema: { body: z.unknown(), response: { 200: programSchema } } }, async ({ body }) =>
    programOfDescription(body),
  );
}
