/** A bound on costly requests only: printing, reducing, exporting. The rest is as fast as one person clicks. */
import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Settings } from '../settings.ts';

export async function costlyRoutes(app: FastifyInstance, settings: Settings): Promise<void> {
  await app.register(rateLimit, {
    global: false,
    max: settings.costlyPerMinute,
    timeWindow: 60_000,
    errorResponseBuilder: (_request, { max, after }) =>
      new InputProblem([
        problem('too-many-requests', `More than ${max} costly requests in a minute; free in ${after}.`),
      ]),
  });
}

/** Put into a route's `config` to have it counted. */
export const COSTLY = { rateLimit: {} };
