/** Count the requests in work and the streams that stay open, so that a shutdown waits for the one and ends the other. */
import type { FastifyInstance } from 'fastify';

export interface InWork {
  /** requests being answered */
  count(): number;
  /** an answer that stays open until it is ended here or by its reader */
  holdOpen(end: () => void): () => void;
  /** wait for the requests, at most so long, then end the open ones */
  settle(waitMs: number): Promise<void>;
}

export function inWork(app: FastifyInstance): InWork {
  const working = new Set<unknown>();
  const open = new Set<() => void>();
  app.addHook('onRequest', async (request) => void working.add(request.raw));
  app.addHook('onResponse', async (request) => void working.delete(request.raw));
  app.addHook('onRequestAbort', async (request) => void working.delete(request.raw));

  return {
    count: () => working.size,
    holdOpen: (end) => {
      open.add(end);
      return () => open.delete(end);
    },
    settle: async (waitMs) => {
      for (const end of open) end();
      const patience = Date.now() + waitMs;
      while (working.size > 0 && Date.now() < patience) await new Promise((resolve) => setTimeout(resolve, 20));
    },
  };
}
