/**
 * What the browser gets beside the pages: the style with its fonts and the modules of templates/browser, bundled in
 * memory when the first page asks. There is no build folder to go stale, and a start does not wait for it.
 */
import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type {} from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';

const TEMPLATES = join(import.meta.dirname, '../templates');

export interface Asset {
  body: Buffer;
  type: string;
  tag: string;
}

const TYPES: Record<string, string> = {
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
};

/** Modules a page may ask for: every file of templates/browser whose name starts with `page-`. */
function entryModules(): string[] {
  const folder = join(TEMPLATES, 'browser');
  return readdirSync(folder)
    .filter((name) => /^page-.*\.ts$/.test(name))
    .map((name) => join(folder, name));
}

/**
 * Bundle style and modules.
 * @returns assets by the name they are served under
 * @throws Error with the bundler's messages when a module does not compile
 */
export async function bundleFrontEnd(): Promise<Map<string, Asset>> {
  const { build } = await import('esbuild');
  const made = await build({
    entryPoints: [join(TEMPLATES, 'style/screen.css'), join(TEMPLATES, 'style/mark.svg'), ...entryModules()],
    outdir: '/assets',
    entryNames: '[name]',
    chunkNames: '[name]-[hash]',
    assetNames: '[name]-[hash]',
    publicPath: '/assets',
    bundle: true,
    splitting: true,
    format: 'esm',
    target: 'es2022',
    minify: true,
    write: false,
    logLevel: 'silent',
    loader: { '.woff2': 'file', '.svg': 'copy' },
  });
  return new Map(
    made.outputFiles.map((file) => {
      const name = basename(file.path.replaceAll('\\', '/'));
      const tag = createHash('sha256').update(file.contents).digest('base64url').slice(0, 16);
      const type = TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
      return [name, { body: Buffer.from(file.contents), type, tag: `"${tag}"` }];
    }),
  );
}

let bundle: Promise<Map<string, Asset>> | undefined;

/** The bundle, made once for the process; a failed one is tried again by the next request. */
function frontEndOnce(): Promise<Map<string, Asset>> {
  bundle ??= bundleFrontEnd().catch((error: unknown) => {
    bundle = undefined;
    throw error;
  });
  return bundle;
}

/**
 * Serve `/assets/*`.
 * @param app the service
 */
export async function frontEnd(app: FastifyInstance): Promise<void> {
  app.get<{ Params: { name: string } }>('/assets/:name', { schema: { hide: true } }, async (request, reply) => {
    const asset = (await frontEndOnce()).get(request.params.name);
    if (!asset) return reply.callNotFound();
    void reply.header('cache-control', 'no-cache').header('etag', asset.tag);
    if (request.headers['if-none-match'] === asset.tag) return reply.code(304).send();
    return reply.type(asset.type).send(asset.body);
  });
}
