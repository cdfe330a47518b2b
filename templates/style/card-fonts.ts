/** The cards' typefaces as data, so that a page needs nothing from outside: read from their packages at run time. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { knownLetters } from '../../analysis/cards/index.ts';

const require = createRequire(import.meta.url);
const read = new Map<string, string>();

/**
 * `@font-face` rules for a text. The fallback face comes along only where the text has letters the first one lacks.
 * @param text everything that will be printed, text
 * @returns rules with the files inlined
 */
export function cardFonts(text: string): string {
  const faces = [
    face('Card Sans', 400, '@fontsource/b612/files/b612-latin-400-normal.woff2', 'woff2'),
    face('Card Sans', 700, '@fontsource/b612/files/b612-latin-700-normal.woff2', 'woff2'),
  ];
  if (lacksLetters(text)) {
    faces.push(face('Card Fallback', 400, 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf', 'ttf'));
    faces.push(face('Card Fallback', 700, 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf', 'ttf'));
  }
  return faces.join('\n');
}

function lacksLetters(text: string): boolean {
  const known = new Set([...knownLetters(), '\n', '\t', '\r']);
  for (const letter of text) if (!known.has(letter)) return true;
  return false;
}

function face(family: string, weight: number, path: string, kind: 'woff2' | 'ttf'): string {
  let rule = read.get(path);
  if (rule === undefined) {
    const data = readFileSync(require.resolve(path)).toString('base64');
    const format = kind === 'ttf' ? 'truetype' : 'woff2';
    const type = `font/${kind}`;
    rule = `@font-face{font-family:"${family}";font-weight:${weight};src:url(data:${type};base64,${data}) format("${format}")}`;
    read.set(path, rule);
  }
  return rule;
}
