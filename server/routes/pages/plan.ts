/** The whole plan shown as it will be printed, and printed. */
import * as z from 'zod';
import { planPage, planView } from '../../../templates/pages/plan.view.ts';
import { planPaperSchema } from '../../../templates/plan/plan-options.ts';
import { planInput, previewPlan, printBookPlan } from '../../actions/print-plan.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { SHEET_POLICY } from '../../plugins/security-headers.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { bookFor, byOf, fieldOf, formOf, sendPage } from './pages.ts';

/** An address with a paper we do not have shows the usual one. */
const paperQuery = z.object({ paper: planPaperSchema.catch('letter') });

export function planRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/program/plan',
    { schema: { hide: true, params: bookParams, querystring: paperQuery } },
    async ({ params, query }, reply) => {
      const { context } = await bookFor(desk, params.book);
      return sendPage(reply, 'plan', planView, planPage(query.paper, context));
    },
  );

  app.get(
    '/books/:book/program/plan/preview',
    {
      helmet: { contentSecurityPolicy: { useDefaults: false, directives: SHEET_POLICY } },
      schema: { hide: true, params: bookParams, querystring: paperQuery },
    },
    async ({ params, query }, reply) => {
      const html = await previewPlan(await planInput(desk, params.book), query.paper);
      return reply.type('text/html; charset=utf-8').header('cache-control', 'no-store').send(html);
    },
  );

  app.post(
    '/books/:book/program/plan/print',
    { config: COSTLY, schema: { hide: true, params: bookParams } },
    async (request, reply) => {
      const form = formOf(request);
      const paper = planPaperSchema.catch('letter').parse(fieldOf(form, 'paper'));
      const { pdf } = await printBookPlan(desk, request.params.book, paper, byOf(form));
      return reply
        .type('application/pdf')
        .header('content-disposition', 'inline; filename="plan.pdf"')
        .send(Buffer.from(pdf));
    },
  );
}
