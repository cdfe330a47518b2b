/** The README says what is so: its accuracy table is the one the gates hold, its pictures are there. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { accuracyTable } from '../outside/accuracy-table.ts';
import { ROOT, textOf } from './source-files.ts';

const readme = textOf('README.md');

describe('README', () => {
  it('carries the accuracy table as it is now (npm run accuracy -- --write)', () => {
    expect(readme).toContain(`<!-- accuracy -->\n${accuracyTable()}\n<!-- end of accuracy -->`);
  });

  it('shows pictures that are in the project', () => {
    const pictures = [...readme.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map((match) => match[1] ?? '');
    expect(pictures.length).toBeGreaterThan(3);
    for (const path of pictures) expect(existsSync(join(ROOT, path)), path).toBe(true);
  });

  it('begins with the two commands a newcomer needs', () => {
    expect(readme).toContain('npm start');
    expect(readme).toContain('npm test');
  });
});
