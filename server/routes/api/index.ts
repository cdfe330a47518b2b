/** All routes of the API, under `/api`. */
import * as z from 'zod';
import { failureSchema } from '../../plugins/error-shape.ts';
import type { Api, Service } from './api.ts';
import { archiveRoutes } from './archive.ts';
import { arrangingRoutes } from './arranging.ts';
import { bookRoutes } from './books.ts';
import { cardRoutes } from './cards.ts';
import { jobRoutes } from './jobs.ts';
import { journalRoutes } from './journal.ts';
import { keptResultRoutes } from './kept-results.ts';
import { logRoutes } from './logs.ts';
import { planRoutes } from './plan.ts';
import { programRoutes } from './program.ts';
import { readingRoutes } from './readings.ts';
import { recordRoutes } from './record.ts';
import { reductionRoutes } from './reductions.ts';
import { resultRoutes } from './results.ts';
import { squawkRoutes } from './squawks.ts';
import { writtenRoutes } from './written.ts';

export function apiRoutes(api: Api, service: Service): void {
  api.addHook('onRoute', (route) => {
    const response = typeof route.schema?.response === 'object' ? route.schema.response : {};
    route.schema = { ...route.schema, response: { ...response, '4xx': failureSchema, '5xx': failureSchema } };
  });
  api.get(
    '/health',
    { schema: { response: { 200: z.object({ status: z.literal('ok'), books: z.int() }) } } },
    async () => ({
      status: 'ok' as const,
      books: service.desk.shelf.ids().length,
    }),
  );
  bookRoutes(api, service);
  programRoutes(api, service);
  planRoutes(api, service);
  arrangingRoutes(api, service);
  cardRoutes(api, service);
  logRoutes(api, service);
  readingRoutes(api, service);
  reductionRoutes(api);
  resultRoutes(api, service);
  keptResultRoutes(api, service);
  recordRoutes(api, service);
  squawkRoutes(api, service);
  writtenRoutes(api, service);
  journalRoutes(api, service);
  archiveRoutes(api, service);
  jobRoutes(api, service);
}
