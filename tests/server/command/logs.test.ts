/** `read` and `reduce` on real files: the shapes scripts rely on, questions before guesses, and plain words for bad files. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { resultSchema } from '../../../analysis/results/index.ts';
import { reportSchema } from '../../../server/routes/api/answers.ts';
import { temporaryFolder } from '../desk-for-tests.ts';
import { runCommand } from './run-command.ts';

const LOGS = 'sample-tests/ouzel/logs';
const RUN = `${LOGS}/ground-run-2.csv`;
const OUZEL = 'sample-tests/ouzel/airplane.json';

function fileOf(content: string | Buffer, name = 'given.csv'): string {
  const path = join(temporaryFolder(), name);
  writeFileSync(path, content);
  return path;
}

describe('read', () => {
  it('prints one log in the shape that interfaces write, with samples in SI', async () => {
    const { code, err, json } = await runCommand(['read', RUN, '--sample', '0,100,1e7', '--json']);
    expect([code, err]).toEqual([0, '']);
    const report = z.strictObject(reportSchema.shape).parse(json());
    expect(report).toMatchObject({
      file: 'ground-run-2.csv',
      accepted: 'yes',
      rows: 5484,
      problems: [],
      questions: [],
    });
    const coolant = report.channels.find((one) => one.quantity === 'coolant-temperature');
    expect(coolant?.samples?.map((one) => one.t)).toEqual([0, 100, 1e7]);
    expect(coolant?.samples?.[2]?.value).toBeNull();
    expect(coolant?.samplesUnit).toBe('K');
  });

  it('gives the same from standard input, but for the name', async () => {
    const piped = await runCommand(['read', '-', '--json'], readFileSync(RUN, 'utf8'));
    const direct = await runCommand(['read', RUN, '--json']);
    expect(piped.code).toBe(0);
    expect({ ...Object(piped.json()), file: 'ground-run-2.csv' }).toEqual(direct.json());
  });

  it('prints a list for several, told apart by name', async () => {
    const other = fileOf('Time [s],Coolant temp [degC]\n0,80\n1,81\n2,82\n', 'ground-run-2.csv');
    const { json } = await runCommand(['read', RUN, other, '--json']);
    expect(json()).toMatchObject([{ file: 'ground-run-2.csv' }, { file: 'ground-run-2 (2).csv' }]);
  });

  it.each([
    ['empty', '', 'empty-file'],
    ['a letter', 'Dear Ines,\n\nthe engine ran well.\n', 'not-a-log'],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]), 'not-a-log'],
    ['a header alone', 'Time [s],Coolant temp [degC]\n', 'no-rows'],
  ])('says what is wrong with %s and how to mend it, and exits 1', async (_, content, code) => {
    const ran = await runCommand(['read', fileOf(content), '--json']);
    expect(ran.code).toBe(1);
    const report = reportSchema.parse(ran.json());
    expect(report.accepted).toBe('no');
    expect(report.problems[0]?.code).toBe(code);
    expect(ran.err).toContain(report.problems[0]?.message);
  });

  it('asks where it would have to guess, exits 3, and is answered by a map', async () => {
    const text = `Time [s],Coolant temp\n${Array.from({ length: 60 }, (_, i) => `${i},${80 + i / 10}`).join('\n')}\n`;
    const path = fileOf(text);
    const asked = await runCommand(['read', path, '--json']);
    const report = reportSchema.parse(asked.json());
    expect([asked.code, report.accepted]).toEqual([3, 'ask']);
    expect(asked.err).toContain(report.questions[0]?.question);
    const map = { columns: { 'Coolant temp': { quantity: 'coolant-temperature', unit: 'degC' } } };
    const answered = await runCommand(['read', path, '--map', fileOf(JSON.stringify(map), 'map.json'), '--json']);
    expect([answered.code, answered.json()]).toMatchObject([0, { accepted: 'yes' }]);
    const wrong = fileOf(JSON.stringify({ columns: { 'Coolant temp': { quantity: 'luck' } } }), 'wrong.json');
    const refused = await runCommand(['read', path, '--map', wrong, '--json']);
    expect([refused.code, refused.json()]).toMatchObject([1, { problems: [{ code: 'bad-map' }] }]);
  });

  it('prints words without --json', async () => {
    const { code, out } = await runCommand(['read', RUN]);
    expect(code).toBe(0);
    expect(out).toContain('ground-run-2.csv: accepted yes, 5484 rows');
  });
});

describe('reduce', () => {
  it('reduces a ground run to the names that scripts rely on', async () => {
    const { code, err, json } = await runCommand(['reduce', 'cooling-ground', RUN, '--airplane', OUZEL, '--json']);
    expect([code, err]).toEqual([0, '']);
    const result = z.strictObject(resultSchema.shape).parse(json());
    expect(result).toMatchObject({ kind: 'cooling-ground', status: 'reduced' });
    expect(result.provenance.files).toMatchObject([{ name: 'ground-run-2.csv' }]);
    const names = result.tables.find((one) => one.name === 'segments')?.columns.map((one) => one.name);
    expect(names).toEqual(
      expect.arrayContaining(['engine-speed', 'exit', 'fan', 'air', 'equilibrium', 'equilibrium-u95', 'regime']),
    );
    expect(result.quantities.map((one) => one.name)).toEqual(expect.arrayContaining(['hot-day-margin']));
    const words = await runCommand(['reduce', 'cooling-ground', RUN, '--airplane', OUZEL]);
    expect(words.out).toMatch(/equilibrium: [\d.]+ ± [\d.]+ °C\n {2}for /);
  });

  it('aligns two recorders and says by what', async () => {
    const logs = [`${LOGS}/airspeed-gps.csv`, `${LOGS}/airspeed-monitor.csv`];
    const { code, json } = await runCommand(['reduce', 'airspeed', ...logs, '--airplane', OUZEL, '--json']);
    expect(code).toBe(0);
    expect(resultSchema.parse(json()).alignment).toMatchObject([{ file: 'airspeed-monitor.csv' }]);
  });

  it('asks for a shift that nothing settles, and takes it by hand', async () => {
    const argv = ['reduce', 'cooling-ground', RUN, `${LOGS}/gear-swings.csv`, '--airplane', OUZEL, '--json'];
    const asked = await runCommand(argv);
    expect([asked.code, asked.json()]).toMatchObject([
      3,
      { kind: 'cooling-ground', status: 'refused', code: 'question-open', questions: [{ file: 'gear-swings.csv' }] },
    ]);
    const set = await runCommand([...argv, '--shift', 'gear-swings.csv=-12.5']);
    expect([set.code, set.json()]).toMatchObject([0, { alignment: [{ shiftSeconds: -12.5, by: 'set by hand' }] }]);
  });

  it('refuses a log without what it needs, with the reason', async () => {
    const log = fileOf(
      `Time [s],Engine speed [rpm]\n${Array.from({ length: 60 }, (_, i) => `${i},2500`).join('\n')}\n`,
    );
    const { code, json, err } = await runCommand(['reduce', 'cooling-ground', log, '--airplane', OUZEL, '--json']);
    const result = z.object({ status: z.literal('refused'), code: z.string(), reason: z.string() }).parse(json());
    expect([code, result.code]).toEqual([1, 'missing-channel']);
    expect(err).toContain(result.reason);
  });

  it('says which file is no log, in the shape of a result', async () => {
    const { code, json } = await runCommand([
      'reduce',
      'cooling-ground',
      RUN,
      fileOf(''),
      '--airplane',
      OUZEL,
      '--json',
    ]);
    expect(code).toBe(1);
    expect(json()).toMatchObject({
      status: 'refused',
      problems: [{ code: 'empty-file', where: { file: 'given.csv' } }],
    });
  });

  it('takes segments set by hand, and says where they do not fit', async () => {
    const segments = [
      { file: 'ground-run-2.csv', fromSeconds: 1239, toSeconds: 1874, role: 'steady', reason: 'calm air' },
    ];
    const argv = ['reduce', 'cooling-ground', RUN, '--airplane', OUZEL, '--json', '--segments'];
    const { code, json } = await runCommand([...argv, fileOf(JSON.stringify(segments), 'seg.json')]);
    expect([code, json()]).toMatchObject([0, { segments: [{ file: 'ground-run-2.csv', toSeconds: 1874 }] }]);
    const backwards = [{ ...segments[0], toSeconds: 0 }];
    const refused = await runCommand([...argv, fileOf(JSON.stringify(backwards), 'seg.json')]);
    expect([refused.code, refused.json()]).toMatchObject([1, { problems: [{ code: 'bad-segments' }] }]);
  });
});
