/** Cards of a book's program: the same document shown and printed. */
import * as z from 'zod';
import { STAGES } from '../../../analysis/catalogue/stage.ts';
import { paperSchema, printOptionsSchema } from '../../../templates/cards/options.ts';
import { keptPrintPlace } from '../../actions/keep-print.ts';
import { previewBookCards, printBookCards } from '../../actions/print-book-cards.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { SHEET_POLICY } from '../../plugins/security-headers.ts';
import { type Api, bookParams, bySchema, type Service } from './api.ts';

export const selectionSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('all') }),
  z.object({ kind: z.literal('outing'), number: z.int().positive() }),
  z.object({ kind: z.literal('flight'), number: z.int().positive() }),
  z.object({ kind: z.literal('stage'), stage: z.enum(STAGES) }),
  z.object({ kind: z.literal('card'), id: z.string() }),
]);

export const cardsBody = bySchema.extend({
  selection: selectionSchema,
  paper: paperSchema,
  options: printOptionsSchema.optional(),
  packet: z.boolean().optional(),
  /** the card as it was flown: of a written card, or of a result from logs */
  flown: z.object({ written: z.int().positive().optional(), result: z.int().positive().optional() }).optional(),
});

export function cardRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/cards',
    { config: COSTLY, schema: { params: bookParams, body: cardsBody, produces: ['application/pdf'] } },
    async ({ params, body }, reply) => {
      const { pdf } = await printBookCards(desk, params.book, body, body);
      return reply
        .type('application/pdf')
        .header('content-disposition', 'inline; filename="cards.pdf"')
        .send(Buffer.from(pdf));
    },
  );

  api.post(
    '/books/:book/cards/preview',
    {
      config: COSTLY,
      helmet: { contentSecurityPolicy: { useDefaults: false, directives: SHEET_POLICY } },
      schema: { params: bookParams, body: cardsBody, produces: ['text/html'] },
    },
    async ({ params, body }, reply) => {
      const { html } = await previewBookCards(desk, params.book, body);
      return reply.type('text/html; charset=utf-8').send(html);
    },
  );

  api.get(
    '/books/:book/prints/:print',
    { schema: { params: bookParams.extend({ print: z.string() }), produces: ['application/pdf'] } },
    async ({ params }, reply) =>
      reply
        .header('content-disposition', 'inline; filename="cards.pdf"')
        .sendFile(keptPrintPlace(desk, params.book, params.print)),
  );
}
