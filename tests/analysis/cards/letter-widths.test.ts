import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { knownLetters, letterWidth } from '../../../analysis/cards/index.ts';

const require = createRequire(import.meta.url);

/** Advance widths of a WOFF file, by code point, in thousandths of the letter height. */
function widthsOf(path: string): Map<number, number> {
  const file = readFileSync(require.resolve(path));
  const tables = new Map<string, Buffer>();
  for (let i = 0; i < file.readUInt16BE(12); i++) {
    const at = 44 + i * 20;
    const data = file.subarray(file.readUInt32BE(at + 4), file.readUInt32BE(at + 4) + file.readUInt32BE(at + 8));
    const packed = file.readUInt32BE(at + 8) !== file.readUInt32BE(at + 12);
    tables.set(file.toString('latin1', at, at + 4), packed ? inflateSync(data) : data);
  }
  const table = (name: string) => tables.get(name) ?? Buffer.alloc(0);
  const perEm = table('head').readUInt16BE(18);
  const count = table('hhea').readUInt16BE(34);
  const advance = (glyph: number) => (table('hmtx').readUInt16BE(Math.min(glyph, count - 1) * 4) / perEm) * 1000;
  const cmap = table('cmap');
  const widths = new Map<number, number>();
  for (let i = 0; i < cmap.readUInt16BE(2); i++) {
    const at = cmap.readUInt32BE(8 + i * 8);
    if (cmap.readUInt16BE(at) !== 4) continue;
    const segments = cmap.readUInt16BE(at + 6) / 2;
    const part = (n: number) => at + 14 + n * segments * 2 + (n > 0 ? 2 : 0);
    for (let k = 0; k < segments; k++) {
      const [last, first] = [cmap.readUInt16BE(part(0) + k * 2), cmap.readUInt16BE(part(1) + k * 2)];
      const [delta, range] = [cmap.readInt16BE(part(2) + k * 2), cmap.readUInt16BE(part(3) + k * 2)];
      for (let letter = first; letter <= last && letter < 0xffff; letter++) {
        const inner = range === 0 ? letter : cmap.readUInt16BE(part(3) + k * 2 + range + (letter - first) * 2);
        const glyph = range === 0 || inner !== 0 ? (inner + delta) & 0xffff : 0;
        if (glyph !== 0) widths.set(letter, advance(glyph));
      }
    }
  }
  return widths;
}

describe('the typeface as its package ships it', () => {
  test.each(['400', '700'])('weight %s has the widths the sheets are filled by', (weight) => {
    const widths = widthsOf(`@fontsource/b612/files/b612-latin-${weight}-normal.woff`);
    expect(knownLetters().length).toBeGreaterThan(200);
    for (const letter of knownLetters()) {
      // rounded to whole thousandths in the table
      expect(Math.abs((widths.get(letter.codePointAt(0) ?? 0) ?? 0) - letterWidth(letter)), letter).toBeLessThanOrEqual(
        0.5,
      );
    }
  });

  test('digits are of one width, so that columns of numbers line up', () => {
    expect(new Set([...'0123456789'].map(letterWidth)).size).toBe(1);
  });
});
