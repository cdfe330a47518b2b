/**
 * The docstring is a contract: every exported function of analysis says what each parameter is, what it throws, and in
 * the rooms of formulas where it comes from; every source key resolves in analysis/sources.ts.
 */
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../analysis/sources.ts';
import { filesUnder, textOf } from './source-files.ts';

const KEYS = new Set(SOURCES.map((source) => source.key));
const FORMULA_ROOMS = ['analysis/air/', 'analysis/models/', 'analysis/numbers/'];

interface Found {
  path: string;
  line: number;
  name: string;
  doc: string;
  params: string[];
  body: string;
}

function functionsOf(path: string): Found[] {
  const text = textOf(path);
  const found: Found[] = [];
  for (const match of text.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n)?export function (\w+)(<[^(]*>)?\(/g)) {
    const start = (match.index ?? 0) + match[0].length;
    const end = closing(text, start);
    const next = text.indexOf('\n}\n', end);
    found.push({
      path,
      line: text.slice(0, (match.index ?? 0) + (match[1]?.length ?? 0)).split('\n').length,
      name: match[2] ?? '',
      doc: match[1] ?? '',
      params: parameterNames(text.slice(start, end)),
      body: text.slice(end, next < 0 ? undefined : next),
    });
  }
  return found;
}

function closing(text: string, start: number): number {
  let depth = 1;
  for (let i = start; i < text.length; i++) {
    const c = text[i];
    if (c === '(' || c === '{' || c === '[') depth++;
    if (c === ')' || c === '}' || c === ']') depth--;
    if (depth === 0) return i;
  }
  return text.length;
}

function parameterNames(list: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let part = '';
  for (const c of list.replace(/\/\*[\s\S]*?\*\//g, '').replace(/=>/g, '  ')) {
    if ('({[<'.includes(c)) depth++;
    if (')}]>'.includes(c)) depth--;
    if (c === ',' && depth === 0) {
      parts.push(part);
      part = '';
    } else part += c;
  }
  parts.push(part);
  return parts
    .map((one) => one.trim().replace(/^\.\.\./, ''))
    .filter(Boolean)
    .map((one) => /^(\w+)/.exec(one)?.[1] ?? '')
    .filter((name) => name !== '');
}

const all = filesUnder('analysis').flatMap(functionsOf);

describe('docstrings of analysis', () => {
  it('are there at all to be read', () => {
    expect(all.length).toBeGreaterThan(50);
  });

  it('stand before every exported function', () => {
    expect(all.filter((one) => !one.doc).map((one) => `${one.path}:${one.line} ${one.name}`)).toEqual([]);
  });

  it('describe every parameter in the rooms of formulas, with unit or type', () => {
    const wrong: string[] = [];
    for (const one of all.filter((f) => FORMULA_ROOMS.some((room) => f.path.startsWith(room)))) {
      for (const name of one.params) {
        const said = new RegExp(`@param (\\{[^}]*\\} )?${name} (.+)`).exec(one.doc)?.[2];
        if (!said) wrong.push(`${one.path}:${one.line} ${one.name}: parameter ${name} is not described`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('describe no parameter that is not there', () => {
    const wrong: string[] = [];
    for (const one of all) {
      for (const match of one.doc.matchAll(/@param (?:\{[^}]*\} )?(\w+)/g)) {
        const name = match[1] ?? '';
        const destructured = one.params.length === 0 || one.params.length < [...one.doc.matchAll(/@param/g)].length;
        if (!one.params.includes(name) && !destructured)
          wrong.push(`${one.path}:${one.line} ${one.name}: no parameter ${name}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('name every error thrown in the body', () => {
    const wrong: string[] = [];
    for (const one of all) {
      for (const match of one.body.matchAll(/throw new (\w+)/g)) {
        if (!one.doc.includes(`@throws ${match[1]}`))
          wrong.push(`${one.path}:${one.line} ${one.name}: @throws ${match[1]} missing`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('name a source in the rooms of formulas, where the function computes', () => {
    const wrong = all
      .filter((one) => FORMULA_ROOMS.some((room) => one.path.startsWith(room)))
      .filter((one) => /[*/]|Math\./.test(one.body.replace(/\/\/.*$/gm, '')) && !one.doc.includes('@source'))
      .map((one) => `${one.path}:${one.line} ${one.name}`);
    expect(wrong).toEqual([]);
  });

  it('cite only keys that analysis/sources.ts holds', () => {
    const wrong: string[] = [];
    for (const one of all) {
      for (const line of one.doc.split('\n').filter((text) => text.includes('@source'))) {
        for (const match of line.matchAll(/\[([a-z0-9][a-z0-9-]+)\]/g)) {
          if (!KEYS.has(match[1] ?? '')) wrong.push(`${one.path}:${one.line} ${one.name}: [${match[1]}]`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });
});
