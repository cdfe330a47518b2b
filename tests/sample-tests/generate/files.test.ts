import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sampleFiles } from '../../../sample-tests/generate/files.ts';

const root = join(import.meta.dirname, '../../../sample-tests');

describe('the sample files on disk are what the generator writes', () => {
  const files = sampleFiles();
  it.each([...files.keys()])('%s', (path) => {
    // Not toBe on the texts: a difference of half a megabyte helps nobody.
    const onDisk = readFileSync(join(root, path), 'utf8');
    const generated = files.get(path) ?? '';
    const lines = onDisk.split('\n');
    const first = generated.split('\n').findIndex((line, i) => line !== lines[i]);
    expect({ line: first, length: generated.length }).toEqual({ line: -1, length: onDisk.length });
  });

  it('keeps the committed samples under 7 MB', () => {
    const bytes = [...files.values()].reduce((sum, text) => sum + text.length, 0);
    expect(bytes).toBeLessThan(7e6);
  });
});
