/** Empty bytes in a file: padding is left out; a block of them is where a recorder lost its power, and cuts the line. */

/** Put where a block of empty bytes stood: the line before it has no proper end. */
export const CUT_MARK = '\u001a';
const CUT_BYTE = 0x1a;
const NEWLINE = 10;
const RETURN = 13;
/** Fewer in a row are padding of a cell (common practice, no source). */
const BLOCK = 16;

export interface ZeroFilter {
  /** The piece without empty bytes. */
  take(piece: Uint8Array, last: boolean): Uint8Array;
  /** empty bytes left out so far, count */
  dropped(): number;
}

/**
 * A filter for the pieces of one file.
 * @returns the filter
 */
export function zeroFilter(): ZeroFilter {
  let count = 0;
  let run = 0;
  let before = NEWLINE;
  return {
    dropped: () => count,
    take(piece, last) {
      if (run === 0 && piece.indexOf(0) < 0) {
        before = piece[piece.length - 1] ?? before;
        return piece;
      }
      const kept = new Uint8Array(piece.length + 4);
      let at = 0;
      const endRun = (atEnd: boolean): void => {
        const cuts = (run >= BLOCK || atEnd) && before !== NEWLINE && before !== RETURN;
        if (cuts) {
          kept[at++] = CUT_BYTE;
          kept[at++] = NEWLINE;
          before = NEWLINE;
        }
        run = 0;
      };
      for (const byte of piece) {
        if (byte === 0) {
          run += 1;
          count += 1;
          continue;
        }
        if (run > 0) endRun(false);
        // Two marks at most for each block of sixteen: there is always room.
        kept[at++] = byte;
        before = byte;
      }
      if (last && run > 0) endRun(true);
      return kept.subarray(0, at);
    },
  };
}
