/** Where a printing browser is looked for, on all three systems, without touching this one. */
import { describe, expect, it } from 'vitest';
import { findBrowser } from '../../server/find-browser.mjs';

const only =
  (...paths: string[]) =>
  (path: string) =>
    paths.includes(path);

describe('a browser for printing', () => {
  it('is the one a person names, before any other', () => {
    const env = { CHROME_PATH: '/opt/mine', PATH: '/usr/bin' };
    expect(
      findBrowser({ platform: 'linux', env, home: '/home/x', exists: only('/opt/mine', '/usr/bin/chromium') }),
    ).toBe('/opt/mine');
  });

  it('is found on the path, the small one first', () => {
    const env = { PATH: '/usr/local/bin:/usr/bin' };
    const both = only('/usr/bin/chromium', '/usr/bin/chromium-headless-shell');
    expect(findBrowser({ platform: 'linux', env, home: '/home/x', exists: both })).toBe(
      '/usr/bin/chromium-headless-shell',
    );
  });

  it('is an installed Edge on Windows when there is nothing else', () => {
    const env = { PROGRAMFILES: 'C:\\Program Files', 'PROGRAMFILES(X86)': 'C:\\Program Files (x86)' };
    const edge = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe';
    expect(findBrowser({ platform: 'win32', env, home: 'C:\\Users\\x', exists: only(edge) })).toBe(edge);
  });

  it('is an application of the person’s own on a Mac', () => {
    const app = '/Users/x/Applications/Chromium.app/Contents/MacOS/Chromium';
    expect(findBrowser({ platform: 'darwin', env: {}, home: '/Users/x', exists: only(app) })).toBe(app);
  });

  it('may be nowhere', () => {
    expect(findBrowser({ platform: 'linux', env: { PATH: '/bin' }, home: '/home/x', exists: () => false })).toBeNull();
  });
});
