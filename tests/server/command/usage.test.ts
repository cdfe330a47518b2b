/** What holds for every verb: help, wrong usage, one shape of complaint, the exit codes. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { runCommand } from './run-command.ts';

const VERBS = ['serve', 'program', 'cards', 'read', 'reduce', 'predict', 'handbook', 'export', 'import'];
const OUZEL = 'sample-tests/ouzel/airplane.json';

describe('the command', () => {
  it('helps, with every verb on the list', async () => {
    for (const argv of [['--help'], ['help'], ['-h']]) {
      const { code, out, err } = await runCommand(argv);
      expect([code, err]).toEqual([0, '']);
      for (const verb of VERBS) expect(out).toContain(`  ${verb} `);
    }
  });

  it.each(VERBS)('helps with %s', async (verb) => {
    const { code, out, err } = await runCommand([verb, '--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(new RegExp(`^proveout ${verb} `));
  });

  it.each([
    [[]],
    [['fly']],
    [['toString']],
    [['program']],
    [['program', OUZEL, OUZEL]],
    [['program', OUZEL, '--nonsense']],
    [['cards', OUZEL, '--all']],
    [['cards', OUZEL, '--out', 'x.pdf']],
    [['cards', OUZEL, '--all', '--flight', '1', '--out', 'x.pdf']],
    [['cards', OUZEL, '--flight', 'one', '--out', 'x.pdf']],
    [['cards', OUZEL, '--stage', 'nowhere', '--out', 'x.pdf']],
    [['cards', OUZEL, '--all', '--paper', 'a3', '--out', 'x.pdf']],
    [['read']],
    [['read', 'x.csv', '--sample', 'soon']],
    [['reduce']],
    [['reduce', 'witchcraft', 'x.csv']],
    [['reduce', 'airspeed']],
    [['reduce', 'airspeed', 'x.csv', '--shift', 'x.csv']],
    [['predict', 'airspeed', 'result.json']],
    [['predict', 'witchcraft', 'result.json', '--at', 'c.json']],
    [['handbook', 'book']],
    [['export', 'book']],
    [['import']],
    [['serve', '--port', 'many']],
    [['serve', '--nonsense']],
  ])('%j is wrong usage', async (argv) => {
    const { code, out, err } = await runCommand(argv);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/proveout .*\n/);
  });

  it.each([
    [['program', 'no-such-file.json'], 'unreadable-file'],
    [['program', 'sample-tests'], 'unreadable-file'],
    [['program', 'package.json'], 'bad-configuration'],
    [['program', 'vitest.config.ts'], 'bad-configuration'],
    [['predict', 'airspeed', OUZEL, '--at', OUZEL], 'bad-request'],
    [['read', 'no-such-file.csv'], 'unreadable-file'],
    [['read', 'sample-tests'], 'unreadable-file'],
    [['handbook', 'book', '--out', 'x.pdf'], 'not-built'],
    [['export', 'no-such-book', '--out', 'x.zip'], 'not-found'],
    [['import', 'no-such-file.zip'], 'unreadable-file'],
  ])('%j says why on stderr, and as JSON alone on stdout', async (argv, code) => {
    const plain = await runCommand(argv);
    expect([plain.code, plain.out]).toEqual([1, '']);
    expect(plain.err).toMatch(/^proveout: .+\n/);
    const asked = await runCommand([...argv, '--json']);
    expect(asked.code).toBe(1);
    expect(asked.err).toBe(plain.err);
    const { problems } = z.object({ problems: z.array(z.object({ code: z.string() })) }).parse(asked.json());
    expect(problems[0]?.code).toMatch(code);
  });
});
