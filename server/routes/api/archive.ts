/** The whole book out and in. */
import { rm } from 'node:fs/promises';
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { exportBook } from '../../actions/export-book.ts';
import { importBook } from '../../actions/import-book.ts';
import { receiveArchive } from '../../actions/receive-archive.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, type Service } from './api.ts';

export function archiveRoutes(api: Api, { desk }: Service): void {
  api.get('/books/:book/archive', { config: COSTLY, schema: { params: bookParams } }, async ({ params }, reply) => {
    const { fileName, stream } = await exportBook(desk, params.book);
    return reply
      .type('application/zip')
      .header('content-disposition', `attachment; filename="${fileName}"`)
      .send(stream);
  });

  api.post(
    '/import',
    {
      config: COSTLY,
      schema: {
        consumes: ['multipart/form-data'],
        response: { 201: z.object({ id: z.string(), entries: z.int(), logs: z.int() }) },
      },
    },
    async (request, reply) => {
      const part = await request.file();
      if (!part) throw new InputProblem([problem('bad-request', 'The request holds no file.')]);
      const path = await receiveArchive(desk, part.file);
      try {
        return reply.code(201).send(await importBook(desk, path));
      } finally {
        await rm(path, { force: true });
      }
    },
  );
}
