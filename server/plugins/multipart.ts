/** Uploads: one file a request, streamed, bounded. */
import multipart from '@fastify/multipart';
import type { FastifyInstance } from 'fastify';
import type { Settings } from '../settings.ts';

export async function uploads(app: FastifyInstance, settings: Settings): Promise<void> {
  // one byte more than allowed may pass, so that the receiver sees that the limit was reached
  const fileSize = Math.max(settings.uploadLimitBytes, settings.archiveLimitBytes) + 1;
  await app.register(multipart, {
    limits: { files: 1, fileSize, fields: 8, fieldSize: 16_384, fieldNameSize: 64, parts: 10, headerPairs: 50 },
    throwFileSizeLimit: false,
  });
}
