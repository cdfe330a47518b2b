// Makes a bare clone ready: packages, and a browser for printing. Needs nothing installed but Node; says what it does
// while it does it, on stderr, because commands print JSON on stdout. Called by start.mjs, cli.mjs and tests/run.mjs.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { findBrowser } from './find-browser.mjs';

const HOME = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const STAMP = path.join(HOME, 'node_modules', '.setup');
const LOCK = path.join(HOME, '.setup-lock');
const TEN_MINUTES = 10 * 60 * 1000;

/** @param {string} line */
const say = (line) => process.stderr.write(`proveout: ${line}\n`);

/**
 * Packages, and as far as wanted a browser.
 * @param {{ browser?: 'required' | 'wanted' | 'no' }} [wish]
 * @returns {{ browser: string | null }}
 */
export function setUp(wish = {}) {
  refuseOldNode();
  installPackages();
  const { browser = 'wanted' } = wish;
  if (browser === 'no') return { browser: null };
  const found = findBrowser() ?? installBrowser();
  if (found) {
    process.env.CHROME_PATH ??= found;
    return { browser: found };
  }
  const how = 'install Chrome, Chromium or Edge, or set CHROME_PATH to one';
  if (browser === 'required') {
    say(`no browser for printing was found and none could be installed: ${how}.`);
    process.exit(1);
  }
  say(
    `no browser for printing: everything works but PDF. To get PDF, ${how}; or print a preview from your own browser.`,
  );
  return { browser: null };
}

function refuseOldNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major >= 24;
  if (fits) return;
  say(
    `Node ${process.versions.node} is too old or an odd release: install the current long-term-support Node (20.19, 22.12 or 24 and later work).`,
  );
  process.exit(1);
}

function wantedStamp() {
  const lock = readFileSync(path.join(HOME, 'package-lock.json'));
  const major = process.versions.node.split('.')[0];
  return `${createHash('sha256').update(lock).digest('hex')} ${process.platform} ${process.arch} node${major}\n`;
}

function isInstalled() {
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wantedStamp();
}

// The stamp is written last, so an install killed half-way is done again.
function installPackages() {
  if (isInstalled()) return;
  takeLock();
  try {
    if (isInstalled()) return;
    say('installing the packages this needs (once, about ten seconds) ...');
    const began = Date.now();
    const code = runNpm(['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
    if (code !== 0) {
      say('the packages could not be installed: see the lines above. Check the network, then run the command again.');
      process.exitCode = 1;
      releaseLock();
      process.exit(1);
    }
    writeFileSync(STAMP, wantedStamp());
    say(`packages installed in ${((Date.now() - began) / 1000).toFixed(0)} s`);
  } finally {
    releaseLock();
  }
}

/** @param {string[]} args */
function runNpm(args) {
  const env = { ...process.env, PUPPETEER_SKIP_DOWNLOAD: '1' };
  const options = {
    cwd: HOME,
    env,
    stdio: /** @type {import('node:child_process').StdioOptions} */ (['ignore', 2, 2]),
  };
  const script = process.env.npm_execpath;
  const done =
    script && /\.[cm]?js$/.test(script)
      ? spawnSync(process.execPath, [script, ...args], options)
      : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  return done.status ?? 1;
}

function takeLock() {
  for (let waited = 0; ; waited += 500) {
    try {
      mkdirSync(LOCK);
      writeFileSync(path.join(LOCK, 'pid'), String(process.pid));
      return;
    } catch {
      if (lockIsStale()) {
        rmSync(LOCK, { recursive: true, force: true });
        continue;
      }
      if (waited === 0) say('another set-up is at work here; waiting for it ...');
      if (waited > TEN_MINUTES) {
        say(`the other set-up did not end; if none is running, delete ${LOCK} and try again.`);
        process.exit(1);
      }
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 500);
    }
  }
}

function lockIsStale() {
  try {
    const pid = Number(readFileSync(path.join(LOCK, 'pid'), 'utf8'));
    process.kill(pid, 0);
    return false;
  } catch (error) {
    if (error?.code === 'EPERM') return false;
    if (error?.code === 'ESRCH') return true;
    // no pid written yet: young locks are honoured, old ones were left by a killed set-up
    return !existsSync(LOCK) || Date.now() - statSync(LOCK).mtimeMs > 10_000;
  }
}

function releaseLock() {
  rmSync(LOCK, { recursive: true, force: true });
}

function installBrowser() {
  if (process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    say('installing a browser for printing through apt (once, about ten seconds) ...');
    const quiet = {
      stdio: /** @type {import('node:child_process').StdioOptions} */ (['ignore', 'ignore', 2]),
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    spawnSync('apt-get', ['update', '-qq'], quiet);
    for (const name of ['chromium-headless-shell', 'chromium']) {
      const done = spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name], quiet);
      const found = done.status === 0 ? findBrowser() : null;
      if (found) return found;
    }
  }
  const cli = path.join(HOME, 'node_modules', 'puppeteer', 'lib', 'cjs', 'puppeteer', 'node', 'cli.js');
  if (!existsSync(cli)) return null;
  say('fetching a browser for printing (once; about 100 MB) ...');
  const done = spawnSync(process.execPath, [cli, 'browsers', 'install', 'chrome-headless-shell'], {
    cwd: HOME,
    stdio: ['ignore', 2, 2],
    timeout: 180_000,
  });
  return done.status === 0 ? findBrowser() : null;
}

if (process.argv[1] && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const wish = process.argv.find((word) => word.startsWith('--browser='))?.slice('--browser='.length);
  setUp({ browser: wish === 'required' || wish === 'no' ? wish : 'wanted' });
}
