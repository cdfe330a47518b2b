/** A column name as classes of words: `E1 OilT` is ENGINE, OIL, TEMP; `CHT3` is CHT with number 3. */
import { WORDS, type Word } from './channel-words.ts';
import { readUnitText } from './unit-text.ts';

export interface NameWords {
  words: Word[];
  numbers: number[];
  /** pieces that no class holds */
  unknown: string[];
}

const PHRASES = new Map<string, Word>();
let longestPhrase = 1;
for (const word of Object.keys(WORDS) as Word[]) {
  for (const written of WORDS[word]) {
    const spelling = withoutMarks(written);
    if (!PHRASES.has(spelling)) PHRASES.set(spelling, word);
    longestPhrase = Math.max(longestPhrase, spelling.split(' ').length);
  }
}

/** What a lone letter stands for beside other words. */
const LETTERS: Readonly<Record<string, Word>> = {
  t: 'TEMP',
  p: 'PRESS',
  l: 'LEFT',
  r: 'RIGHT',
  v: 'VOLT',
  a: 'AMP',
  f: 'FUEL',
};

/** Longer words are not broken: compound nouns of German are shorter. */
const MOST_LETTERS = 32;

const cache = new Map<string, NameWords>();

/**
 * The words of a column name.
 * @param name header text without its unit, text
 * @returns classes of words, numbers, and what is not known
 */
export function nameWords(name: string): NameWords {
  const known = cache.get(name);
  if (known) return known;
  const plain = read(tokens(name, false));
  const split = read(tokens(name, true));
  const best =
    split.unknown.length < plain.unknown.length ||
    (split.unknown.length === plain.unknown.length && split.words.length < plain.words.length)
      ? split
      : plain;
  // Names come from files, so the memory of them is kept small.
  if (cache.size > 2000) cache.clear();
  cache.set(name, best);
  return best;
}

/** Accents are left out by half the people who write them: `Öl` as `Ol`, `Régime` as `Regime`. */
function withoutMarks(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('ß', 'ss');
}

function tokens(name: string, camel: boolean): string[] {
  let text = withoutMarks(name.slice(0, 120));
  if (camel) text = text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replace(/(\p{Lu}+)(\p{Lu}\p{Ll})/gu, '$1 $2');
  text = text
    .toLowerCase()
    .replace(/h2o/g, ' wasser ')
    .replace(/[^\p{L}\p{N}%]+/gu, ' ');
  // `e1` and `wgs84` stay whole words; `cht1` is a word and a number.
  text = text.replace(/\b(e1|e2|eng1|eng2)\b/g, (engine) => (engine.endsWith('1') ? ' eng ' : ' secondengine '));
  text = text.replace(/(\p{L})(\d)/gu, '$1 $2').replace(/(\d)(\p{L})/gu, '$1 $2');
  return text.split(' ').filter((token) => token !== '');
}

function read(list: readonly string[]): NameWords {
  const out: NameWords = { words: [], numbers: [], unknown: [] };
  let i = 0;
  while (i < list.length) {
    const length = phraseAt(list, i);
    if (length > 0) {
      const word = PHRASES.get(list.slice(i, i + length).join(' '));
      if (word) out.words.push(word);
      i += length;
      continue;
    }
    const token = list[i] ?? '';
    i++;
    if (token === 'secondengine') out.words.push('SECOND_ENGINE');
    else if (/^\d+$/.test(token)) out.numbers.push(Number(token));
    else if (northOf(token, out.words.at(-1))) out.words.push(token === 't' ? 'TRUE' : 'MAGNETIC');
    else if (token.length === 1 && Object.hasOwn(LETTERS, token) && list.length > 1)
      out.words.push(LETTERS[token] ?? 'NEUTRAL');
    else {
      const broken = breakWord(token);
      if (broken) out.words.push(...broken);
      else out.unknown.push(token);
    }
  }
  return out;
}

/** `Track T`, `Heading M`: behind a direction the letter says which north it is measured from. */
function northOf(token: string, before: Word | undefined): boolean {
  return (token === 't' || token === 'm') && (before === 'TRACK' || before === 'HDG' || before === 'COURSE');
}

function phraseAt(list: readonly string[], from: number): number {
  for (let length = Math.min(longestPhrase, list.length - from); length > 0; length--) {
    if (PHRASES.has(list.slice(from, from + length).join(' '))) return length;
  }
  return 0;
}

/** A word run together (`oiltemp`, `fqtyl`, `toil`): known words, with at most one lone letter at an end. */
function breakWord(token: string): Word[] | null {
  // `hpa` is a unit, and no pressure altitude with a letter.
  if (token.length > MOST_LETTERS || token.length < 3 || readUnitText(token).units.length > 0) return null;
  const whole = breakWhole(token);
  if (whole) return whole;
  const last = token.at(-1) ?? '';
  const head = breakWhole(token.slice(0, -1));
  if (head && Object.hasOwn(LETTERS, last)) return [...head, LETTERS[last] ?? 'NEUTRAL'];
  const first = token[0] ?? '';
  const tail = breakWhole(token.slice(1));
  if (tail && Object.hasOwn(LETTERS, first)) return [LETTERS[first] ?? 'NEUTRAL', ...tail];
  return null;
}

const GLUE: readonly Word[] = ['NEUTRAL', 'MONOXIDE'];

function breakWhole(token: string): Word[] | null {
  const direct = PHRASES.get(token);
  // Short words that join others say nothing where they may be part of any word.
  if (direct && (token.length > 2 || !GLUE.includes(direct))) return [direct];
  for (let at = token.length - 2; at >= 2; at--) {
    const head = PHRASES.get(token.slice(0, at));
    if (!head || (at <= 2 && GLUE.includes(head))) continue;
    const joined = PHRASES.get(`${token.slice(0, at)} ${token.slice(at)}`);
    if (joined) return [joined];
    const tail = breakWhole(token.slice(at));
    if (tail) return [head, ...tail];
  }
  return null;
}
