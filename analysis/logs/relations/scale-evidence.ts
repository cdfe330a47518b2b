/** What other columns of a file say about the unit of one: the SI value of one of its written units, measured. */

/** A column with its numbers as written, and the units it may be in, the stated one first. */
export interface ScaledColumn {
  /** place among the file's columns, count */
  place: number;
  column: string;
  quantity: string;
  numbers: Float64Array;
  /** unit taken, or null where open */
  unit: string | null;
}

export interface ScaleEvidence {
  place: number;
  /** SI value of one written unit, as the other columns make it */
  factor: number;
  /** relative, within which a unit's own factor must lie to agree */
  tolerance: number;
  /** what it was measured with, in words */
  by: string;
}

/** Rows enough for a measurement of this kind; a longer log is thinned evenly. */
const MOST_ROWS = 6000;

/**
 * Row indices spread evenly over a log.
 * @param rows rows of the log, count
 * @returns indices, rising
 */
export function someRows(rows: number): Int32Array {
  const stride = Math.max(1, Math.ceil(rows / MOST_ROWS));
  return Int32Array.from({ length: Math.ceil(rows / stride) }, (_, k) => k * stride);
}
