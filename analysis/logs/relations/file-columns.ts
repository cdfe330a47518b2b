/** The recognised columns of a file, found by quantity. */
import { baseName } from '../../units/index.ts';
import type { ScaledColumn } from './scale-evidence.ts';

export interface FileColumns {
  /** the only or first column of a quantity */
  of(quantity: string): ScaledColumn | undefined;
  all(quantity: string): ScaledColumn[];
}

/**
 * Index columns by quantity.
 * @param list columns with a quantity
 * @returns functions to find them
 */
export function fileColumns(list: readonly ScaledColumn[]): FileColumns {
  const all = (quantity: string) => list.filter((one) => baseName(one.quantity) === quantity);
  return { all, of: (quantity) => all(quantity)[0] };
}
