/** `proveout program --out`: the whole plan as a PDF. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../desk-for-tests.ts';
import { runCommand } from './run-command.ts';

const FILE = 'sample-tests/wrenlet/airplane.json';

describe('program --out', () => {
  it('writes the plan and says how many pages', { timeout: 60_000 }, async () => {
    const out = join(temporaryFolder(), 'plan.pdf');
    const { code, err, json } = await runCommand(['program', FILE, '--out', out, '--paper', 'a4', '--json']);
    expect([code, err]).toEqual([0, '']);
    expect(json()).toMatchObject({ file: out, paper: 'a4', tests: 104 });
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('refuses a paper it lacks, a paper without a file, and a place it cannot write to', async () => {
    expect((await runCommand(['program', FILE, '--out', 'x.pdf', '--paper', 'a3'])).code).toBe(2);
    expect((await runCommand(['program', FILE, '--paper', 'a4'])).code).toBe(2);
    const nowhere = await runCommand(['program', FILE, '--out', join(temporaryFolder(), 'no', 'plan.pdf')]);
    expect(nowhere.code).toBe(1);
    expect(nowhere.err).toContain('could not be written');
  });
});
