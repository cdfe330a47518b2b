/** Files sent as they lie on the disk: ranges and validators from the library, never a type a browser would run. */
import fileServer from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import type { Settings } from '../settings.ts';

export async function downloads(app: FastifyInstance, settings: Settings): Promise<void> {
  await app.register(fileServer, {
    root: settings.dataFolder,
    serve: false,
    contentType: false,
    cacheControl: false,
    dotfiles: 'deny',
    setHeaders: (reply, path) => {
      const type = path.endsWith('.pdf') ? 'application/pdf' : 'application/octet-stream';
      void reply.header('content-type', type).header('cache-control', 'private, no-cache');
    },
  });
}
