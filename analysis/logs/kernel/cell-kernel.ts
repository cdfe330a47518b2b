/** The loops over cells, made once for each thread, with their memory. They keep nothing from one call to the next. */
import { assemble } from './assemble.ts';
import { CELLS_TEXT, PAGES, PLACE, POWERS } from './cells-text.ts';

export interface CellKernel {
  /** its memory by bytes, by 16 and by 32 bits */
  bytes: Uint8Array;
  shorts: Int16Array;
  words: Int32Array;
  cells(
    at: number,
    to: number,
    row: number,
    rows: number,
    column: number,
    width: number,
    stride: number,
    separator: number,
    pair: number,
    marks: bigint,
  ): number;
  extent(from: number, count: number): void;
  zeros(from: number, to: number): number;
}

/** As much of the host's interface as is used here; no library of types that Node and the browser share declares it. */
declare const WebAssembly: {
  Module: new (bytes: Uint8Array) => object;
  Instance: new (
    module: object,
  ) => { exports: Pick<CellKernel, 'cells' | 'extent' | 'zeros'> & { memory: { buffer: ArrayBuffer } } };
};

let made: CellKernel | null = null;

/**
 * The loops of this thread.
 * @returns functions and their memory
 */
export function cellKernel(): CellKernel {
  if (made) return made;
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(assemble(CELLS_TEXT, PAGES)));
  const { buffer } = exports.memory;
  const powers = new BigInt64Array(buffer, PLACE.powers, POWERS);
  powers.forEach((_, i) => {
    powers[i] = 10n ** BigInt(i);
  });
  made = {
    bytes: new Uint8Array(buffer),
    shorts: new Int16Array(buffer),
    words: new Int32Array(buffer),
    cells: exports.cells,
    extent: exports.extent,
    zeros: exports.zeros,
  };
  return made;
}
