/** Security headers: nothing from outside, nothing inline, framed by nobody but our own preview. */
import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

/** The policy of every page; a route that shows a printed sheet with its style inlined loosens its own. */
export const CONTENT_POLICY = {
  'default-src': ["'self'"],
  'img-src': ["'self'", 'data:'],
  'object-src': ["'none'"],
  'base-uri': ["'none'"],
  'form-action': ["'self'"],
  'frame-ancestors': ["'self'"],
};

/** The policy of a sheet shown in a frame: style and fonts stand inside it, nothing runs. */
export const SHEET_POLICY = {
  'default-src': ["'none'"],
  'style-src': ["'unsafe-inline'"],
  'img-src': ['data:'],
  'font-src': ['data:'],
  'base-uri': ["'none'"],
  'form-action': ["'none'"],
  'frame-ancestors': ["'self'"],
};

export async function securityHeaders(app: FastifyInstance): Promise<void> {
  // the plugin writes a route's own policy into its config, and routes may share one: each gets a copy
  app.addHook('onRoute', (route) => {
    route.config = { ...route.config };
  });
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_POLICY },
    // the service speaks plain HTTP to this machine
    strictTransportSecurity: false,
    frameguard: { action: 'sameorigin' },
    referrerPolicy: { policy: 'same-origin' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
  });
}
