/** The top of the house, and words that have no place in it. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { filesUnder, ROOT, textOf } from './source-files.ts';

const ROOMS = new Set([
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'server',
  'templates',
  'analysis',
  'tests',
  'sample-tests',
]);
const CONFIG = new Set([
  'tsconfig.json',
  'tsconfig.browser.json',
  'biome.json',
  'vitest.config.ts',
  'node_modules',
  'data',
  'LICENSE',
]);

describe('the top of the house', () => {
  it('holds what its plan shows, beyond configuration and dot files', () => {
    const extra = readdirSync(ROOT).filter((name) => !ROOMS.has(name) && !CONFIG.has(name) && !name.startsWith('.'));
    expect(extra).toEqual([]);
  });

  it('never tells a person that something is safe', () => {
    // what was shown, in which conditions, with what margin: that is what may be said
    const word = /\bsafe(ly|r|st)?\b/i;
    const wrong: string[] = [];
    const shown = [
      ...filesUnder('templates', '.hbs'),
      ...filesUnder('templates'),
      ...filesUnder('analysis'),
      ...filesUnder('server'),
    ];
    for (const path of shown) {
      textOf(path)
        .split('\n')
        .forEach((line, i) => {
          if (word.test(line)) wrong.push(`${path}:${i + 1} ${line.trim()}`);
        });
    }
    expect(wrong).toEqual([]);
  });

  it('has no skipped, focused or empty check', () => {
    const wrong: string[] = [];
    for (const path of filesUnder('tests')) {
      if (path.startsWith('tests/house/')) continue;
      textOf(path)
        .split('\n')
        .forEach((line, i) => {
          if (/\b(it|test|describe)\.(skip|todo|only)\b|expect\(true\)/.test(line)) wrong.push(`${path}:${i + 1}`);
        });
    }
    expect(wrong).toEqual([]);
  });
});
