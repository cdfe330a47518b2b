/** Two logs beside each other for a person to look at: the signals they share, and the shift these tell. */
import type { LogTable } from '../table.ts';
import { type AlignedTables, alignTables } from './align-tables.ts';
import { type SharedSignal, sharedSignals } from './shared-signal.ts';

export interface ComparedClocks {
  /** what is compared, in order of trust, one value a step */
  signals: SharedSignal[];
  /** s */
  step: number;
  found: AlignedTables;
}

/** A person looks at seconds; finer steps only make the page heavier. */
const STEP = 1;

/**
 * Put two logs beside each other.
 * @param first the log that sets the clock, table
 * @param other the log to be put on it, table
 * @returns their signals at even steps, and what the alignment makes of them
 */
export function compareClocks(first: LogTable, other: LogTable): ComparedClocks {
  return { signals: sharedSignals(first, other, STEP), step: STEP, found: alignTables([first, other]) };
}
