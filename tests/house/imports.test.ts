/** Imports run one way: server -> templates -> analysis. Inside analysis a room imports from its left, by doors. */
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codeOf, filesUnder, importsOf } from './source-files.ts';

const LADDER: readonly (readonly string[])[] = [
  ['units', 'sources', 'remarks'],
  ['numbers'],
  ['air'],
  ['airplane'],
  ['logs'],
  ['segments'],
  ['results'],
  ['models'],
  ['reductions'],
  ['catalogue'],
  ['program'],
  ['cards'],
  ['handbook'],
];
const RUNG = new Map(LADDER.flatMap((rooms, rung) => rooms.map((room) => [room, rung] as const)));

/** packages pure computation may rest on */
const ALLOWED_PACKAGES = new Set(['zod', 'ml-matrix', 'papaparse']);

const MAY: Record<string, readonly string[]> = {
  analysis: ['analysis'],
  templates: ['templates', 'analysis'],
  server: ['server', 'templates', 'analysis'],
  'sample-tests': ['sample-tests', 'analysis'],
};

function target(path: string, from: string): string | null {
  return from.startsWith('.') ? normalize(join(dirname(path), from)).replaceAll('\\', '/') : null;
}

const roomOf = (path: string) => (path === 'analysis/sources.ts' ? 'sources' : (path.split('/')[1] ?? ''));

describe('imports', () => {
  it.each(Object.keys(MAY))('%s imports only what stands below it', (house) => {
    const wrong: string[] = [];
    for (const path of filesUnder(house)) {
      for (const { from, line } of importsOf(path)) {
        const to = target(path, from);
        if (to === null) continue;
        const top = to.split('/')[0] ?? '';
        if (!MAY[house]?.includes(top)) wrong.push(`${path}:${line} imports ${to}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('sample logs are made without the code they test', () => {
    const wrong: string[] = [];
    for (const path of filesUnder('sample-tests')) {
      for (const { from, line } of importsOf(path)) {
        const to = target(path, from);
        if (to?.startsWith('analysis/') && !to.startsWith('analysis/units/'))
          wrong.push(`${path}:${line} imports ${to}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('rooms of analysis stand on a ladder and are entered by their doors', () => {
    const wrong: string[] = [];
    for (const path of filesUnder('analysis')) {
      const room = roomOf(path);
      const rung = RUNG.get(room);
      if (rung === undefined) {
        wrong.push(`${path}: no such room on the ladder`);
        continue;
      }
      for (const { from, line } of importsOf(path)) {
        const to = target(path, from);
        if (to === null) {
          const name = from.split('/')[0] ?? from;
          if (!ALLOWED_PACKAGES.has(name)) wrong.push(`${path}:${line} imports package ${from}`);
          continue;
        }
        const other = roomOf(to);
        if (other === room) continue;
        const otherRung = RUNG.get(other);
        if (otherRung === undefined || otherRung > rung || (otherRung === rung && rung > 0)) {
          wrong.push(`${path}:${line} imports ${to}, which does not stand to its left`);
        } else if (to !== 'analysis/sources.ts' && to !== `analysis/${other}/index.ts`) {
          wrong.push(`${path}:${line} imports ${to}, not the door analysis/${other}/index.ts`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it('reductions never import each other', () => {
    const wrong: string[] = [];
    for (const path of filesUnder('analysis/reductions')) {
      const room = path.split('/')[2] ?? '';
      if (room.endsWith('.ts')) continue;
      for (const { from, line } of importsOf(path)) {
        const to = target(path, from);
        const other = to?.startsWith('analysis/reductions/') ? (to.split('/')[2] ?? '') : room;
        if (other !== room && other !== 'reduction.ts') wrong.push(`${path}:${line} imports ${to}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('analysis is pure: no clock, no chance, no world', () => {
    const impure =
      /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bMath\.random\b|\bprocess\.|\bdocument\.|\bwindow\.|\bconsole\.|\bperformance\.|\bfetch\(|\bsetTimeout\b|\brequire\(/;
    const wrong: string[] = [];
    for (const path of filesUnder('analysis')) {
      codeOf(path)
        .split('\n')
        .forEach((line, i) => {
          if (impure.test(line)) wrong.push(`${path}:${i + 1} ${line.trim()}`);
        });
      for (const { from, line } of importsOf(path)) {
        if (from.startsWith('node:') || from === 'handlebars') wrong.push(`${path}:${line} imports ${from}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('only one file knows Handlebars, and only one the database', () => {
    const knows = (name: string) =>
      [...filesUnder('templates'), ...filesUnder('server')].filter((path) =>
        importsOf(path).some(({ from }) => from === name),
      );
    expect(knows('handlebars')).toEqual(['templates/render.ts']);
    expect(knows('libsql')).toEqual(['server/book/database.ts']);
  });
});
