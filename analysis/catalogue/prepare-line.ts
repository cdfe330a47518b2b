/** A line of the catalogue the way one airplane's card prints it: pieces that apply, references answered, figures in its units. */
import type { Airplane } from '../airplane/index.ts';
import { fromSi, toSi } from '../units/index.ts';
import { type Facts, holds } from './condition-words.ts';
import type { Known } from './derived.ts';
import { MEASURES, shows } from './measures.ts';
import { plainNumber, roughNumber } from './numerals.ts';
import { type ResolvedNumber, resolveReference, type UnresolvedNumber } from './reference.ts';
import type { Line, Text } from './test.ts';

/** A general figure of the text, printed in the airplane's unit. */
export interface Figure {
  kind: 'figure';
  text: string;
  number: string;
  symbol: string;
  si: number;
  unit: string;
}

export type LinePiece = { kind: 'words'; text: string } | ResolvedNumber | UnresolvedNumber | Figure;

export interface PreparedLine {
  /** the whole line as plain text */
  text: string;
  pieces: LinePiece[];
}

export interface At {
  airplane: Airplane;
  known: Known;
  facts: Facts;
}

/**
 * A line where it applies.
 * @param line line of the catalogue
 * @param at airplane, accepted results and facts, object
 * @param stop true on stop lines, where the margin agreed is taken off
 * @returns one line, or none
 */
export function preparedLine(line: Line, at: At, stop: boolean): PreparedLine[] {
  if (typeof line === 'string' || Array.isArray(line)) return kept(prepare(line, at, stop));
  if (!('when' in line) || !holds(line.when, at.facts)) return [];
  return kept(prepare(line.text, at, stop));
}

function kept(line: PreparedLine): PreparedLine[] {
  return line.text.trim() === '' ? [] : [line];
}

/**
 * Lines that are sentences begin with a capital, also where their first piece fell away.
 * @param lines prepared lines, list
 * @returns the lines
 */
export function sentences(lines: readonly PreparedLine[]): PreparedLine[] {
  return lines.map((line) => {
    const [first, ...rest] = line.pieces;
    if (first?.kind !== 'words') return line;
    const text = first.text.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());
    const pieces: LinePiece[] = [{ kind: 'words', text }, ...rest];
    return { text: textOf(pieces), pieces };
  });
}

function textOf(pieces: readonly LinePiece[]): string {
  return pieces.map((piece) => piece.text).join('');
}

/** `95 KIAS est.` at the end of a sentence needs no second full stop. */
function withoutDoubleStop(pieces: readonly LinePiece[]): LinePiece[] {
  return pieces.flatMap((piece, i): LinePiece[] => {
    const after = pieces[i - 1]?.text.endsWith('est.') && piece.kind === 'words' && piece.text.startsWith('.');
    if (!after) return [piece];
    const text = piece.text.slice(1);
    return text === '' ? [] : [{ kind: 'words', text }];
  });
}

/**
 * A text with its pieces and references for an airplane.
 * @param text text of the catalogue
 * @param at airplane, accepted results and facts, object
 * @param stop true on stop lines, where the margin agreed is taken off
 * @returns the line with its pieces
 */
export function prepare(text: Text, at: At, stop: boolean): PreparedLine {
  const source =
    typeof text === 'string'
      ? text
      : text.map((one) => (typeof one === 'string' ? one : holds(one.when, at.facts) ? one.text : '')).join('');
  const pieces = withoutDoubleStop(piecesOf(tidy(source), at, stop));
  return { text: textOf(pieces), pieces };
}

const TOKEN = /\{\{([^}]+)\}\}/;

function piecesOf(source: string, at: At, stop: boolean): LinePiece[] {
  return source.split(/(\{\{[^}]+\}\})/).flatMap((part): LinePiece[] => {
    if (part === '') return [];
    const token = TOKEN.exec(part)?.[1];
    if (token === undefined) return [{ kind: 'words', text: part }];
    const [kind = '', ...rest] = token.trim().split(/\s+/);
    if (kind === 'show') return [figure(rest, at.airplane)];
    const path = rest[0] ?? '';
    return [resolveReference(path, at.airplane, at.known, stop ? marginOf(path, at.airplane) : 0)];
  });
}

/** Margin agreed between a caution and the stop number on a card, SI difference. */
function marginOf(path: string, airplane: Airplane): number {
  const { stopMargin } = airplane.plan;
  if (path === 'limits.coolant.caution') return stopMargin.coolant?.si ?? 0;
  if (path === 'limits.oil.caution') return stopMargin.oil?.si ?? 0;
  if (path === 'limits.cylinderHead.caution') return stopMargin.cylinderHead?.si ?? 0;
  return 0;
}

/** `{{show measure value unit}}`: exact in its own unit, else two digits; a height is rounded up. */
function figure(words: readonly string[], airplane: Airplane): Figure {
  const [name = '', value = '', unit = ''] = words;
  const measure = MEASURES.find((one) => one === name);
  if (!measure || value === '' || unit === '') throw new Error(`the catalogue asks to show "${words.join(' ')}"`);
  const show = shows(measure, airplane);
  const si = toSi(Number(value), unit);
  const number =
    show.unit === unit ? plainNumber(Number(value)) : roughNumber(fromSi(si, show.unit), measure === 'height');
  return {
    kind: 'figure',
    text: `${number}${show.symbol === '' ? '' : ` ${show.symbol}`}`,
    number,
    symbol: show.symbol,
    si,
    unit: show.unit,
  };
}

/**
 * Joins left by pieces that fell away.
 * @param text words of a line
 * @returns the words, joined as one writes
 */
export function tidy(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/ ([,;:.])/g, '$1')
    .trim()
    .replace(/^([,;]\s*)+/, '');
}
