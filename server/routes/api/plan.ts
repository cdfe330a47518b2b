/** The whole plan of a book's airplane: the same document shown and printed. */
import { planPaperSchema } from '../../../templates/plan/plan-options.ts';
import { planInput, previewPlan, printBookPlan } from '../../actions/print-plan.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { SHEET_POLICY } from '../../plugins/security-headers.ts';
import { type Api, bookParams, bySchema, type Service } from './api.ts';

export const planBody = bySchema.extend({ paper: planPaperSchema.default('letter') });

export function planRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/plan',
    { config: COSTLY, schema: { params: bookParams, body: planBody, produces: ['application/pdf'] } },
    async ({ params, body }, reply) => {
      const { pdf } = await printBookPlan(desk, params.book, body.paper, body);
      return reply
        .type('application/pdf')
        .header('content-disposition', 'inline; filename="plan.pdf"')
        .send(Buffer.from(pdf));
    },
  );

  api.post(
    '/books/:book/plan/preview',
    {
      config: COSTLY,
      helmet: { contentSecurityPolicy: { useDefaults: false, directives: SHEET_POLICY } },
      schema: { params: bookParams, body: planBody, produces: ['text/html'] },
    },
    async ({ params, body }, reply) => {
      const html = await previewPlan(await planInput(desk, params.book), body.paper);
      return reply.type('text/html; charset=utf-8').send(html);
    },
  );
}
