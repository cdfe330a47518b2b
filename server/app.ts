/** The service, built but not listening: plugins, the API, the pages. A test injects requests into it. */
import Fastify from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { Desk } from './desk.ts';
import { frontEnd } from './front-end.ts';
import { downloads } from './plugins/downloads.ts';
import { errorShape } from './plugins/error-shape.ts';
import { inWork } from './plugins/in-work.ts';
import { uploads } from './plugins/multipart.ts';
import { openApi } from './plugins/openapi.ts';
import { ownMachine } from './plugins/own-machine.ts';
import { costlyRoutes } from './plugins/rate-limit.ts';
import { securityHeaders } from './plugins/security-headers.ts';
import type { Api, Service } from './routes/api/api.ts';
import { apiRoutes } from './routes/api/index.ts';
import { pageRoutes } from './routes/pages/index.ts';

export interface App extends Service {
  http: Api;
  /** wait for the requests in work, end the open streams, close the service, then the desk */
  close(): Promise<void>;
}

/**
 * Build the service.
 * @param desk what its deeds work at
 */
export async function buildApp(desk: Desk): Promise<App> {
  const { settings } = desk;
  const app = Fastify({
    logger: { level: settings.logFaults ? 'error' : 'silent', stream: process.stderr },
    bodyLimit: settings.jsonLimitBytes,
    forceCloseConnections: true,
    routerOptions: { maxParamLength: 200 },
  }).withTypeProvider<ZodTypeProvider>();
  const service = { desk, inWork: inWork(app) };

  errorShape(app);
  ownMachine(app, settings.host);
  await securityHeaders(app);
  await costlyRoutes(app, settings);
  await uploads(app, settings);
  await downloads(app, settings);
  await openApi(app);
  await app.register(frontEnd);
  await app.register(async (api) => apiRoutes(api.withTypeProvider<ZodTypeProvider>(), service), { prefix: '/api' });
  await app.register(async (pages) => pageRoutes(pages.withTypeProvider<ZodTypeProvider>(), service));

  return {
    ...service,
    http: app,
    close: async () => {
      await service.inWork.settle(settings.shutdownWaitMs);
      await app.close();
      await desk.close();
    },
  };
}
