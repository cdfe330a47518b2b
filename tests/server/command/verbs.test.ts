/** Each verb does what the deeds do, and prints it as JSON alone. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { createBook } from '../../../server/actions/create-book.ts';
import { openBook } from '../../../server/actions/open-book.ts';
import { programOfDescription } from '../../../server/actions/program-of.ts';
import { openDesk } from '../../../server/desk.ts';
import { settingsOf } from '../../../server/settings.ts';
import {
  changed,
  deskWithOuzel,
  emptyDesk,
  OUZEL,
  steppingClock,
  temporaryFolder,
  WRENLET,
} from '../desk-for-tests.ts';
import { runCommand } from './run-command.ts';

const FILE = 'sample-tests/ouzel/airplane.json';
const LEGS = [
  { track: 0, ground: 80.6 },
  { track: 90, ground: 90 },
  { track: 180, ground: 80.6 },
  { track: 270, ground: 70 },
].map(({ track, ground }) => ({
  'indicated-airspeed': { value: 78, unit: 'kt' },
  'pressure-altitude': { value: 3000, unit: 'ft' },
  'outside-air-temperature': { value: 9, unit: 'degC' },
  'ground-speed': { value: ground, unit: 'kt' },
  'track-true': { value: track, unit: 'deg' },
}));

/** JSON in a file that is gone after the test. */
function fileOf(value: unknown): string {
  const path = join(temporaryFolder(), 'given.json');
  writeFileSync(path, JSON.stringify(value));
  return path;
}

describe('program', () => {
  it('prints the program, from a file and from standard input', async () => {
    const { code, err, json } = await runCommand(['program', FILE, '--json']);
    expect([code, err]).toEqual([0, '']);
    const program: unknown = JSON.parse(JSON.stringify(await programOfDescription(OUZEL)));
    expect(json()).toEqual(program);
    const piped = await runCommand(['program', '-', '--json'], readFileSync(FILE, 'utf8'));
    expect(piped.json()).toEqual(program);
    const words = await runCommand(['program', FILE]);
    expect(words.out).toContain('Program of Ouzel');
  });

  it('says each field that does not fit', async () => {
    const bad = changed(OUZEL, 'limits.coolant.limit.value', 'hot');
    const { code, json } = await runCommand(['program', '-', '--json'], JSON.stringify(bad));
    expect(code).toBe(1);
    expect(json()).toMatchObject({ problems: [{ where: { field: 'limits.coolant.limit.value' } }] });
  });
});

describe('cards', () => {
  it('are written as a PDF', { timeout: 120_000 }, async () => {
    const out = join(temporaryFolder(), 'cards.pdf');
    const argv = ['cards', FILE, '--card', 'open-inspection', '--paper', 'a4-2up', '--out', out, '--json'];
    const { code, json } = await runCommand(argv);
    expect(code).toBe(0);
    expect(json()).toMatchObject({ file: out, paper: 'a4-2up', cards: ['open-inspection'] });
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('that the program lacks, or that cannot be written, are said', { timeout: 120_000 }, async () => {
    const out = join(temporaryFolder(), 'no-such-folder', 'cards.pdf');
    const missing = await runCommand(['cards', FILE, '--card', 'nothing', '--out', out, '--json']);
    expect([missing.code, missing.json()]).toMatchObject([1, { problems: [{ code: 'not-found' }] }]);
    const unwritten = await runCommand(['cards', FILE, '--card', 'open-inspection', '--out', out, '--json']);
    expect([unwritten.code, unwritten.json()]).toMatchObject([1, { problems: [{ code: 'unwritable-file' }] }]);
  });
});

describe('reduce and predict', () => {
  const points = { kind: 'airspeed', points: LEGS };
  const airplane = () => fileOf(WRENLET);

  it('reduce written figures and predict from the JSON', async () => {
    const reduced = await runCommand([
      'reduce',
      'airspeed',
      '--points',
      fileOf(points),
      '--airplane',
      airplane(),
      '--json',
    ]);
    expect([reduced.code, reduced.err]).toEqual([0, '']);
    expect(reduced.json()).toMatchObject({ kind: 'airspeed', status: 'reduced' });
    const at = fileOf({ 'indicated-airspeed': { value: 78, unit: 'kt' } });
    const predicted = await runCommand(['predict', 'airspeed', '-', '--at', at, '--json'], reduced.out);
    expect([predicted.code, predicted.err]).toEqual([0, '']);
    expect(predicted.json()).toMatchObject({ kind: 'airspeed', status: 'predicted' });
    const mixed = await runCommand(['predict', 'weight-balance', '-', '--at', at, '--json'], reduced.out);
    expect([mixed.code, mixed.json()]).toMatchObject([1, { problems: [{ code: 'bad-request' }] }]);
  });

  it('print a refusal with its reason, and exit 1', async () => {
    const two = fileOf({ kind: 'airspeed', points: LEGS.slice(0, 2) });
    const refused = await runCommand(['reduce', 'airspeed', '--points', two, '--airplane', airplane(), '--json']);
    const result = z
      .object({ status: z.literal('refused'), reason: z.string(), code: z.string() })
      .parse(refused.json());
    expect(refused.code).toBe(1);
    expect(refused.err).toContain(result.reason);
  });

  it('print points that do not fit in the shape of a result', async () => {
    const bad = fileOf({ kind: 'airspeed', points: [] });
    const { code, json, err } = await runCommand(['reduce', 'airspeed', '--points', bad, '--json']);
    expect(code).toBe(1);
    expect(json()).toMatchObject({
      kind: 'airspeed',
      status: 'refused',
      quantities: [],
      problems: [{ code: 'bad-points' }],
    });
    expect(err).toMatch(/^proveout: /);
  });
});

describe('export and import', () => {
  it('carry a whole book', async () => {
    const { desk, book } = deskWithOuzel();
    const before = await openBook(desk, book);
    await desk.close();
    const [zip, data] = [join(temporaryFolder(), 'book.zip'), temporaryFolder()];
    const out = await runCommand(['export', join(desk.settings.dataFolder, book), '--out', zip, '--json']);
    expect([out.code, out.json()]).toMatchObject([0, { file: zip, sizeUnit: 'B' }]);
    const taken = await runCommand(['import', zip, '--data', data, '--json']);
    expect(taken.code).toBe(0);
    const { id } = z.object({ id: z.string(), folder: z.string() }).parse(taken.json());
    const other = openDesk({ settings: settingsOf({ dataFolder: data }), now: steppingClock() });
    expect({ ...(await openBook(other, id)), id: book }).toEqual(before);
    await other.close();
  });

  it('ask which book is meant where there are several', async () => {
    const desk = emptyDesk();
    const books = [createBook(desk, { airplane: OUZEL }), createBook(desk, { airplane: WRENLET })];
    await desk.close();
    const { code, err } = await runCommand(['export', desk.settings.dataFolder, '--out', 'x.zip']);
    expect(code).toBe(1);
    for (const book of books) expect(err).toContain(book);
  });

  it('say who has the book', async () => {
    const { desk, book } = deskWithOuzel();
    const argv = ['export', join(desk.settings.dataFolder, book), '--out', 'x.zip', '--json'];
    expect((await runCommand(argv)).json()).toMatchObject({ problems: [{ code: 'book-in-use' }] });
  });

  it('refuse a file that is no archive', async () => {
    const data = temporaryFolder();
    const { code, json } = await runCommand(['import', FILE, '--data', data, '--json']);
    expect([code, json()]).toMatchObject([1, { problems: [{ code: 'bad-archive' }] }]);
  });
});

describe('cards with results and readings', () => {
  it('print what a result predicts, and the card as it was flown', { timeout: 120_000 }, async () => {
    const folder = temporaryFolder();
    const at = (name: string) => join(folder, name);
    const points = [0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30].map((minute) => ({
      time: { value: minute, unit: 'min' },
      run: 'A',
      'coolant-temperature': { value: Math.round(10 * (101 - 6 * Math.exp(-minute / 8))) / 10, unit: 'degC' },
      'engine-speed': { value: 1400, unit: 'rpm' },
      'outside-air-temperature': { value: 18, unit: 'degC' },
      'cowl-exit-position': { value: 100, unit: '%' },
      'cooling-fan-state': 'on',
    }));
    writeFileSync(at('points.json'), JSON.stringify({ kind: 'cooling-ground', points }));
    const reduced = await runCommand([
      'reduce',
      'cooling-ground',
      '--points',
      at('points.json'),
      '--airplane',
      FILE,
      '--json',
    ]);
    writeFileSync(at('hold.json'), reduced.out);
    writeFileSync(
      at('written.json'),
      JSON.stringify({ boxes: { 't1.2-3.coolant-out': { text: '120', who: 'Ines' } } }),
    );
    const argv = ['cards', FILE, '--card', 'ground-cooling-fan-hold', '--results', at('hold.json'), '--json'];
    const blank = await runCommand([...argv, '--out', at('blank.pdf')]);
    expect([blank.code, blank.err]).toEqual([0, '']);
    const flown = await runCommand([...argv, '--written', at('written.json'), '--out', at('flown.pdf')]);
    expect([flown.code, flown.err]).toEqual([0, '']);
    for (const name of ['blank.pdf', 'flown.pdf']) {
      expect(readFileSync(at(name)).subarray(0, 5).toString(), name).toBe('%PDF-');
    }
    const none = await runCommand([
      'cards',
      FILE,
      '--all',
      '--written',
      at('written.json'),
      '--out',
      at('x.pdf'),
      '--json',
    ]);
    expect(none.code).toBe(1);
    expect(none.err).toMatch(/names? one with --card|name one with --card/);
  });
});
