// Loads a TypeScript module of the project. Hundreds of small files cost most of a second to find and translate one by
// one, so they are joined once into a few and kept under node_modules/.cache, named by the state of every source file:
// there is nothing to build and nothing to go stale. Where that cannot be done, they are translated as they load.
import { createHash, randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';

const SERVER = path.dirname(fileURLToPath(import.meta.url));
const HOME = path.resolve(SERVER, '..');
const CACHE = path.join(HOME, 'node_modules', '.cache', 'proveout');
const SOURCES = ['analysis', 'templates', 'server'];
const KEPT = 12;
const ENTRIES = ['main.ts', 'command/proveout.ts', 'reading/worker.ts'];

/**
 * @param {'main.ts' | 'command/proveout.ts' | 'reading/worker.ts'} entry
 * @returns {Promise<any>} what the module exports
 */
export async function load(entry) {
  const joined = await joinedModules().catch(() => null);
  if (joined) return import(pathToFileURL(path.join(joined, entry.replace(/\.ts$/, '.mjs'))).href);
  const { register } = await import('tsx/esm/api');
  register();
  return import(pathToFileURL(path.join(SERVER, entry)).href);
}

async function joinedModules() {
  if (process.env.PROVEOUT_LOAD === 'each') return null;
  const folder = path.join(CACHE, stateOfSources());
  if (!existsSync(folder)) await join(folder);
  return folder;
}

function stateOfSources() {
  const hash = createHash('sha256').update(`${HOME} ${process.version}`);
  for (const file of ['package-lock.json', 'server/load.mjs']) hash.update(readFileSync(path.join(HOME, file)));
  for (const room of SOURCES) {
    const files = readdirSync(path.join(HOME, room), { recursive: true, encoding: 'utf8' });
    for (const name of files.filter((one) => one.endsWith('.ts')).sort()) {
      const { size, mtimeMs } = statSync(path.join(HOME, room, name));
      hash.update(`${room}/${name} ${size} ${mtimeMs}\n`);
    }
  }
  return hash.digest('hex').slice(0, 24);
}

/** @param {string} folder where the joined modules are to stand; they appear there all at once */
async function join(folder) {
  const { build } = await import('esbuild');
  const beside = path.join(CACHE, `.${randomBytes(6).toString('hex')}`);
  mkdirSync(beside, { recursive: true });
  try {
    await build({
      entryPoints: ENTRIES.map((one) => path.join(SERVER, one)),
      outbase: SERVER,
      outdir: beside,
      outExtension: { '.js': '.mjs' },
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      logLevel: 'silent',
      plugins: [keepPlaces, packagesOutside],
    });
    writeFileSync(path.join(beside, 'package.json'), '{ "type": "module" }\n');
    renameSync(beside, folder);
    forgetOld();
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    // another process may have been faster
    if (!existsSync(folder)) throw error;
  }
}

/** A service that runs on may still load a part of its own joined modules: the newest ones stay. */
function forgetOld() {
  const byAge = readdirSync(CACHE)
    .map((name) => ({ name, at: statSync(path.join(CACHE, name)).mtimeMs }))
    .sort((a, b) => b.at - a.at);
  for (const { name } of byAge.slice(KEPT)) rmSync(path.join(CACHE, name), { recursive: true, force: true });
}

/** A module goes on knowing the place of its own source file. */
const keepPlaces = {
  name: 'keep-places',
  /** @param {import('esbuild').PluginBuild} build */
  setup(build) {
    build.onLoad({ filter: /\.ts$/ }, ({ path: file }) => ({
      loader: 'ts',
      contents: readFileSync(file, 'utf8')
        .replaceAll('import.meta.dirname', JSON.stringify(path.dirname(file)))
        .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(file).href)),
    }));
  },
};

/** Packages are loaded from where they are installed, but for one that is itself a hundred small files, and its user. */
const JOINED_PACKAGES = /^(zod|fastify-type-provider-zod)(\/|$)/;

const packagesOutside = {
  name: 'packages-outside',
  /** @param {import('esbuild').PluginBuild} build */
  setup(build) {
    build.onResolve({ filter: /^[^./]/ }, ({ path: name, kind }) =>
      kind === 'entry-point' || JOINED_PACKAGES.test(name) || path.isAbsolute(name)
        ? undefined
        : { path: name, external: true },
    );
    build.onResolve({ filter: /\.mjs$/ }, ({ path: name, resolveDir }) => ({
      path: pathToFileURL(path.resolve(resolveDir, name)).href,
      external: true,
    }));
  },
};
