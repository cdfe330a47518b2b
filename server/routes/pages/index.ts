/** All pages. Each route opens the book, builds the view and renders it; what is done is done by the actions. */
import { type Problem, problem } from '../../../analysis/remarks/index.ts';
import { renderPage } from '../../../templates/pages/render-page.ts';
import { troublePage, troubleView } from '../../../templates/pages/trouble.view.ts';
import { problemsOf, statusOf } from '../../plugins/error-shape.ts';
import type { Api, Service } from '../api/api.ts';
import { airplaneRoutes } from './airplane.ts';
import { arrangingRoutes } from './arranging.ts';
import { cardRoutes } from './cards.ts';
import { clockRoutes } from './clocks.ts';
import { gateRoutes } from './gates.ts';
import { helpRoutes } from './help.ts';
import { homeRoutes } from './home.ts';
import { logRoutes } from './logs.ts';
import { outingRoutes } from './outings.ts';
import { ownTestRoutes } from './own-tests.ts';
import { planRoutes } from './plan.ts';
import { programRoutes } from './program.ts';
import { programGraphRoutes } from './program-graph.ts';
import { recordRoutes } from './record.ts';
import { resultRoutes } from './results.ts';
import { shelfRoutes } from './shelf.ts';
import { writtenRoutes } from './written.ts';
import { writtenCardRoutes } from './written-cards.ts';

/** Largest form: a section of an airplane with every field filled to its end. */
const FORM_LIMIT = 512 * 1024;

/**
 * @param app a scope of its own: its errors are pages, its bodies are forms
 * @param service desk and what is in work
 */
export function pageRoutes(app: Api, service: Service): void {
  app.addContentTypeParser(
    'application/x-www-form-urlencoded',
    { parseAs: 'string', bodyLimit: FORM_LIMIT },
    (_request, body, done) => done(null, new URLSearchParams(String(body))),
  );
  app.setErrorHandler((error, request, reply) => {
    const problems = problemsOf(error);
    const status = statusOf(problems);
    if (status === 500) request.log.error(error);
    return reply
      .code(status)
      .type('text/html; charset=utf-8')
      .send(troubleHtml(problems, backOf(request.headers.referer, request.headers.host)));
  });
  shelfRoutes(app, service);
  helpRoutes(app, service);
  homeRoutes(app, service);
  airplaneRoutes(app, service);
  planRoutes(app, service);
  arrangingRoutes(app, service);
  ownTestRoutes(app, service);
  programRoutes(app, service);
  programGraphRoutes(app, service);
  cardRoutes(app, service);
  outingRoutes(app, service);
  gateRoutes(app, service);
  logRoutes(app, service);
  clockRoutes(app, service);
  writtenRoutes(app, service);
  writtenCardRoutes(app, service);
  resultRoutes(app, service);
  recordRoutes(app, service);
  app.get('/*', { schema: { hide: true } }, async (request, reply) => {
    if (request.url.startsWith('/api/')) return reply.callNotFound();
    const problems = [problem('not-found', 'There is no page at this address.')];
    return reply.code(404).type('text/html; charset=utf-8').send(troubleHtml(problems, ''));
  });
}

function troubleHtml(problems: readonly Problem[], back: string): string {
  return renderPage('trouble', troubleView, troublePage(problems, back));
}

/** The page a person came from, when it is one of ours. */
function backOf(referer: string | undefined, host: string | undefined): string {
  if (referer === undefined || !URL.canParse(referer)) return '';
  const from = new URL(referer);
  return from.host === host ? `${from.pathname}${from.search}` : '';
}
