/** Help: how, and by which method. */
import * as z from 'zod';
import { REDUCTIONS } from '../../../analysis/reductions/index.ts';
import { helpPage, helpView } from '../../../templates/pages/help.view.ts';
import { glossaryPage, lookUpView, remarksPage, sourcesPage } from '../../../templates/pages/look-up.view.ts';
import { methodPage, methodView } from '../../../templates/pages/method.view.ts';
import { knownReduction } from '../../actions/reduce-recording.ts';
import type { Api } from '../api/api.ts';
import { sendPage } from './pages.ts';

export function helpRoutes(app: Api): void {
  const hidden = { schema: { hide: true } };
  app.get('/help', hidden, async (_, reply) => sendPage(reply, 'help', helpView, helpPage(REDUCTIONS)));
  app.get('/help/words', hidden, async (_, reply) => sendPage(reply, 'look-up', lookUpView, glossaryPage()));
  app.get('/help/remarks', hidden, async (_, reply) => sendPage(reply, 'look-up', lookUpView, remarksPage()));
  app.get('/help/sources', hidden, async (_, reply) => sendPage(reply, 'look-up', lookUpView, sourcesPage()));
  app.get(
    '/help/methods/:kind',
    { schema: { hide: true, params: z.object({ kind: z.string() }) } },
    async ({ params }, reply) => sendPage(reply, 'method', methodView, methodPage(await knownReduction(params.kind))),
  );
}
