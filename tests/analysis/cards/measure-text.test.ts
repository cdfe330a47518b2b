import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitText, linesIn, lineWidth, textWidth, words } from '../../../analysis/cards/index.ts';

const FACE = { words: 12, numbers: 18 };
const text = fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 20 }).map((all) => all.join(' '));

test('a text that fits takes one line, and twice the width never more lines', () => {
  fc.assert(
    fc.property(text, fc.double({ min: 30, max: 140, noNaN: true }), (one, width) => {
      const lines = linesIn(words(one), FACE, width);
      expect(lines === 1).toBe(textWidth(one, 12) <= width);
      expect(linesIn(words(one), FACE, 2 * width)).toBeLessThanOrEqual(lines);
    }),
  );
});

test('a number and its unit are not parted', () => {
  const line = [...words('hold '), { kind: 'number' as const, number: '104', unit: '°C', estimated: false }];
  const width = lineWidth(line, FACE);
  expect(linesIn(line, FACE, width + 0.01)).toBe(1);
  expect(linesIn(line, FACE, width - 0.01)).toBe(2);
});

test('a word longer than the line is cut, each piece counted', () => {
  expect(linesIn(words('w'.repeat(60)), FACE, 20)).toBe(Math.ceil(textWidth('w'.repeat(60), 12) / 20));
});

test('a text that does not fit is cut between words and says so', () => {
  fc.assert(
    fc.property(text, fc.double({ min: 20, max: 140, noNaN: true }), (one, width) => {
      const fitted = fitText(one, 9, width);
      expect(textWidth(fitted, 9)).toBeLessThanOrEqual(width);
      if (fitted !== one) expect(fitted).toMatch(/…$/);
      expect(one.startsWith(fitted.replace(/ ?…$/, ''))).toBe(true);
    }),
  );
});
