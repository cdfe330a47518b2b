/** Results: reduced and kept, or only looked at. */
import * as z from 'zod';
import { resultSchema } from '../../../analysis/results/index.ts';
import { reduce, reduceUnstored } from '../../actions/reduce.ts';
import { storedResultSchema } from '../../book/book-state.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { questionSchema } from './answers.ts';
import { type Api, bookParams, type Service } from './api.ts';
import { reduceBody } from './reduce-body.ts';

const questions = z.object({ answer: z.literal('questions'), questions: z.array(questionSchema) });
const stored = z.object({ answer: z.literal('stored'), stored: storedResultSchema });
const looked = z.object({ answer: z.literal('result'), result: resultSchema, reads: z.array(z.string()) });

export function resultRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/results',
    {
      config: COSTLY,
      schema: { params: bookParams, body: reduceBody, response: { 200: z.union([stored, questions]) } },
    },
    async ({ params, body }) => reduce(desk, params.book, body, body),
  );

  api.post(
    '/books/:book/results/trial',
    {
      config: COSTLY,
      schema: { params: bookParams, body: reduceBody, response: { 200: z.union([looked, questions]) } },
    },
    async ({ params, body }) => (await reduceUnstored(desk, params.book, body)).reduced,
  );
}
