/** The program as a person works with it: moves, new plans, what came of outings, own tests, tests left out. */
import * as z from 'zod';
import { arrangeProgram, type Proposal, proposeChange } from '../../actions/arrange-program.ts';
import { leaveOutTest } from '../../actions/leave-out-test.ts';
import { noteOuting } from '../../actions/note-outing.ts';
import { ownTestsOf, saveOwnTest, withdrawOwnTest } from '../../actions/own-tests.ts';
import { outingNoteSchema } from '../../book/plan-entries.ts';
import { type Api, bookParams, bySchema, nothing, numbered, type Service } from './api.ts';

const number = z.int().positive();
const trial = z.boolean().default(false).describe('true: only say what it would change');

const moveBody = z.union([
  bySchema.extend({ test: z.string(), part: number.optional(), to: number, newOuting: z.boolean().optional(), trial }),
  bySchema.extend({ outing: number, to: number, trial }),
]);

const happened = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('repeat'), test: z.string(), part: number.optional() }),
  z.object({ kind: z.literal('no-go'), outing: number }),
  z.object({ kind: z.literal('day-lost'), outing: number }),
]);

const replanBody = bySchema.extend({
  happened: z.array(happened).max(50).describe('none: back to the order as worked out'),
  trial,
});

const comparison = z.object({
  words: z.string(),
  changes: z.array(
    z.object({
      what: z.enum(['kept', 'changed', 'new', 'gone', 'shifted']),
      before: z.string().nullable(),
      after: z.string().nullable(),
      words: z.string(),
    }),
  ),
  kept: z.int(),
  printAgain: z.array(z.object({ before: z.string(), after: z.string().nullable(), because: z.string() })),
  renumbered: z.array(z.object({ before: z.string(), after: z.string() })),
});

const ownTests = z.object({ tests: z.array(z.object({ test: z.string(), file: z.unknown() })) });
const testParams = bookParams.extend({ test: z.string() });

export function arrangingRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/program/moves',
    { schema: { params: bookParams, body: moveBody, response: { 200: comparison } } },
    async ({ params, body }) => {
      const { who, why, trial: only, ...move } = body;
      return answerOf(
        only
          ? await proposeChange(desk, params.book, move)
          : await arrangeProgram(desk, params.book, move, { who, why }),
      );
    },
  );

  api.post(
    '/books/:book/program/replans',
    { schema: { params: bookParams, body: replanBody, response: { 200: comparison } } },
    async ({ params, body: { happened: list, trial: only, ...by } }) => {
      const change = list.length === 0 ? { afresh: true as const } : { happened: list };
      return answerOf(
        only ? await proposeChange(desk, params.book, change) : await arrangeProgram(desk, params.book, change, by),
      );
    },
  );

  api.post(
    '/books/:book/outings/:number/notes',
    {
      schema: {
        params: bookParams.extend({ number: z.coerce.number().int().positive() }),
        body: bySchema.extend({ what: outingNoteSchema, note: z.string().max(4000).default('') }),
        response: { 201: numbered },
      },
    },
    async ({ params, body }, reply) =>
      reply.code(201).send({ number: await noteOuting(desk, params.book, params.number, body, body) }),
  );

  api.put(
    '/books/:book/tests/:test/left-out',
    {
      schema: {
        params: testParams,
        body: bySchema.extend({
          out: z.boolean(),
          reason: z.string().max(4000).default(''),
          instead: z.string().max(4000).default(''),
        }),
        response: nothing,
      },
    },
    async ({ params, body }, reply) => {
      await leaveOutTest(desk, params.book, params.test, body, body);
      return reply.code(204).send(null);
    },
  );

  api.get(
    '/books/:book/own-tests',
    { schema: { params: bookParams, response: { 200: ownTests } } },
    async ({ params }) => ({ tests: ownTestsOf(desk, params.book) }),
  );

  api.put(
    '/books/:book/own-tests/:test',
    {
      schema: {
        params: testParams,
        body: bySchema.extend({ file: z.record(z.string(), z.unknown()).describe('a test as the catalogue has them') }),
        response: { 200: z.object({ test: z.string() }) },
      },
    },
    async ({ params, body: { file, ...by } }) => {
      const saved = await saveOwnTest(desk, params.book, { ...file, id: params.test }, by);
      return { test: saved.id };
    },
  );

  api.delete(
    '/books/:book/own-tests/:test',
    { schema: { params: testParams, response: nothing } },
    async ({ params }, reply) => {
      await withdrawOwnTest(desk, params.book, params.test);
      return reply.code(204).send(null);
    },
  );
}

function answerOf({ words, changes, kept, printAgain, renumbered }: Proposal) {
  return { words, changes, kept, printAgain, renumbered };
}
