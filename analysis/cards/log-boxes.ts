/** Boxes that lead back to the log and the flight: clock, fuel; in the shop, the day and who did it. */
import type { Airplane } from '../airplane/index.ts';
import { type CatalogueTest, shows } from '../catalogue/index.ts';
import type { Box } from './card.ts';

const AT_THE_BENCH = new Set(['shop', 'sign-off']);

/**
 * The last boxes of a card.
 * @param test the test of the catalogue, object
 * @param airplane the description, object
 * @returns boxes in order
 */
export function logBoxes(test: CatalogueTest, airplane: Airplane): Box[] {
  if (AT_THE_BENCH.has(test.stage)) return [box('date', 'date', 'words', 0), box('done-by', 'done by', 'words', 0)];
  const { unit, symbol } = shows('fuel', airplane);
  const clocks = [box('clock-start', 'clock start', 'clock', 4), box('clock-stop', 'stop', 'clock', 4)];
  return [
    ...clocks,
    { ...box('fuel-left', 'fuel left', 'number', 3), unit: symbol, unitId: unit, quantity: 'fuel-quantity' },
  ];
}

function box(key: string, label: string, write: Box['write'], digits: number): Box {
  return { key, label, unit: '', unitId: null, quantity: null, write, digits, expect: null, measured: null };
}
