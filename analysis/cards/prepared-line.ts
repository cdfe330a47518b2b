/** A line of the catalogue, made ready for an airplane, as a card carries it. */
import type { LinePiece, PreparedLine } from '../catalogue/index.ts';
import type { Line, Token } from './line.ts';

const BEHIND_ESTIMATE = /\s*\best\.$/;

/**
 * The card's line of a prepared one.
 * @param line pieces of the catalogue's text, object
 * @returns tokens: words, numbers with units, places of missing numbers
 */
export function lineOf(line: PreparedLine): Line {
  return line.pieces.map((piece, i) => {
    const token = tokenOf(piece);
    const before = line.pieces[i - 1];
    // the full stop of "est." also ends the sentence
    const stopped = before?.kind === 'number' && before.status === 'estimated' && token.kind === 'text';
    return stopped && token.text.startsWith('.') ? { ...token, text: token.text.slice(1) } : token;
  });
}

/** The token of one piece. */
export function tokenOf(piece: LinePiece): Token {
  switch (piece.kind) {
    case 'words':
      return { kind: 'text', text: piece.text };
    case 'missing':
      return { kind: 'missing', path: piece.path, meaning: piece.meaning, unit: piece.symbol };
    case 'figure':
      return { kind: 'number', number: piece.number, unit: piece.symbol, estimated: false };
    case 'number':
      return {
        kind: 'number',
        number: piece.number,
        unit: [piece.symbol, piece.behind.replace(BEHIND_ESTIMATE, '')].filter(Boolean).join(' '),
        estimated: piece.status === 'estimated',
        path: piece.path,
      };
  }
}
