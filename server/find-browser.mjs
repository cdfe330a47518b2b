// Where a printing browser may be: a pure function of platform, environment and `exists`, so that a test can play all
// three systems. Parses on old Node versions.
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';

const ON_PATH = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
];

/**
 * Candidate paths, best first.
 * @param {NodeJS.Platform} platform
 * @param {Record<string, string | undefined>} env
 * @param {string} home
 * @returns {string[]}
 */
export function browserCandidates(platform, env, home) {
  const named = [env.CHROME_PATH, env.PUPPETEER_EXECUTABLE_PATH].filter(Boolean);
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
    const inside = [
      ['Google', 'Chrome', 'Application', 'chrome.exe'],
      ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
      ['Chromium', 'Application', 'chrome.exe'],
    ];
    return named.concat(inside.flatMap((parts) => roots.map((root) => path.win32.join(root, ...parts))));
  }
  if (platform === 'darwin') {
    const apps = [
      'Google Chrome.app/Contents/MacOS/Google Chrome',
      'Chromium.app/Contents/MacOS/Chromium',
      'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ];
    return named.concat(apps.flatMap((app) => [`/Applications/${app}`, `${home}/Applications/${app}`]));
  }
  const folders = (env.PATH ?? '').split(':').filter(Boolean);
  return named.concat(ON_PATH.flatMap((name) => folders.map((folder) => `${folder}/${name}`)));
}

/**
 * The browser to print with, or null.
 * @param {{ platform?: NodeJS.Platform, env?: Record<string, string | undefined>, home?: string, exists?: (p: string) => boolean }} [world]
 * @returns {string | null}
 */
export function findBrowser(world = {}) {
  const { platform = process.platform, env = process.env, home = homedir(), exists = existsSync } = world;
  const found = browserCandidates(platform, env, home).find((candidate) => exists(candidate));
  return found ?? (world.exists ? null : downloadedBrowser(env, home));
}

// A browser that an earlier start let the printing library fetch into its own cache.
function downloadedBrowser(env, home) {
  const cache = env.PUPPETEER_CACHE_DIR ?? path.join(home, '.cache', 'puppeteer');
  const names = new Set(['chrome-headless-shell', 'chrome-headless-shell.exe', 'chrome', 'chrome.exe']);
  try {
    for (const entry of readdirSync(cache, { recursive: true, withFileTypes: true })) {
      if (entry.isFile() && names.has(entry.name)) return path.join(entry.parentPath ?? entry.path, entry.name);
    }
  } catch {
    // no cache folder: nothing was fetched
  }
  return null;
}
