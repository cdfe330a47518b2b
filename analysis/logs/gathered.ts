/** All that reading the rows of a file leaves behind, before it is given meaning. */
import type { Problem } from '../remarks/index.ts';
import type { ReadOptions } from './read-outcome.ts';
import type { RowStore } from './rows/row-store.ts';
import type { Encoding } from './text/encoding.ts';
import type { Layout } from './text/layout.ts';

export interface Gathered {
  options: ReadOptions;
  bytes: number;
  encoding: Encoding | null;
  layout: Layout | null;
  store: RowStore | null;
  nulBytes: number;
  problem: Problem | null;
  /** first lines as text, for showing them where no layout was found */
  firstLines: string[];
}

/**
 * Nothing read yet.
 * @param options name, hash, what a person confirmed, object
 * @returns what reading will fill in
 */
export function emptyGathered(options: ReadOptions): Gathered {
  return {
    options,
    bytes: 0,
    encoding: null,
    layout: null,
    store: null,
    nulBytes: 0,
    problem: null,
    firstLines: [],
  };
}
