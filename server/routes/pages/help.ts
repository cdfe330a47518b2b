/** Help: how, and by which method. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { REDUCTIONS } from '../../../analysis/reductions/index.ts';
import { helpPage, helpView } from '../../../templates/pages/help.view.ts';
import { glossaryPage, lookUpView, remarksPage, sourcesPage } from '../../../templates/pages/look-up.view.ts';
import { methodPage, methodView } from '../../../templates/pages/method.view.ts';
import { specimenAirplane, specimensPage, specimensView } from '../../../templates/pages/specimens.view.ts';
import { knownReduction } from '../../actions/reduce-recording.ts';
import type { Api, Service } from '../api/api.ts';
import { sendPage } from './pages.ts';

export function helpRoutes(app: Api, { desk }: Service): void {
  const hidden = { schema: { hide: true } };
  app.get('/help', hidden, async (_, reply) => sendPage(reply, 'help', helpView, helpPage(REDUCTIONS)));
  app.get('/help/words', hidden, async (_, reply) => sendPage(reply, 'look-up', lookUpView, glossaryPage()));
  app.get('/help/remarks', hidden, async (_, reply) => sendPage(reply, 'look-up', lookUpView, remarksPage()));
  app.get('/help/sources', hidden, async (_, reply) => sendPage(reply, 'look-up', lookUpView, sourcesPage()));
  app.get('/specimens', hidden, async (_, reply) => {
    const file = join(desk.settings.samplesFolder, 'ouzel/airplane.json');
    const json: unknown = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
    return sendPage(reply, 'specimens', specimensView, specimensPage(specimenAirplane(json)));
  });
  app.get(
    '/help/methods/:kind',
    { schema: { hide: true, params: z.object({ kind: z.string() }) } },
    async ({ params }, reply) => sendPage(reply, 'method', methodView, methodPage(await knownReduction(params.kind))),
  );
}
