/** One list of bad news: every code has its words and is raised somewhere; nothing raises a code that is not listed. */
import { describe, expect, it } from 'vitest';
import { CODES } from '../../analysis/remarks/index.ts';
import { codeOf, filesUnder } from './source-files.ts';

const files = ['analysis', 'server', 'templates']
  .flatMap((folder) => filesUnder(folder))
  .filter((path) => path !== 'analysis/remarks/codes.ts');
const code = files.map(codeOf).join('\n');

describe('codes', () => {
  it.each(Object.entries(CODES))('%s says what it means and how to mend it', (_, entry) => {
    expect(entry.meaning).toMatch(/^[A-Z].*\.$/);
    expect(entry.mend).toMatch(/^[A-Z].*\.$/);
  });

  it('are each raised somewhere', () => {
    const silent = Object.keys(CODES).filter(
      (one) => !new RegExp(`['"\`]${one}['"\`]`).test(code) && !new RegExp(`\\b${one}:`).test(code),
    );
    expect(silent).toEqual([]);
  });
});
