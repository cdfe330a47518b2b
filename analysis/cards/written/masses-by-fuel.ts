/** Mass at each speed of a card, from the mass stated for its first figure of fuel aboard. */
import { gasolineDensity } from '../../models/index.ts';
import { toSi } from '../../units/index.ts';
import type { CardReader } from './card-reader.ts';

/**
 * Mass by the fuel read at each speed.
 * @param reader what was written
 * @param startMass with the fuel of the first figure, kg, or null
 * @returns for the number of a speed its mass, kg, or null where mass or fuel is not known
 */
export function massesByFuel(reader: CardReader, startMass: number | null): (speed: number) => number | null {
  const table = reader.card.tables.find((one) => one.head.label === 'speed' && one.columns[0]?.key === 'fuel-aboard');
  const fuel = (table?.rows ?? []).map((row) => {
    const read = table && reader.cell(table, row, 'fuel-aboard');
    return read ? toSi(read.value, read.stated.unit) : null;
  });
  return (speed) => massWith(fuel[speed] ?? null, fuel[0] ?? null, startMass);
}

/**
 * Mass with the fuel aboard now.
 * @param now fuel aboard, m3, or null
 * @param first fuel aboard with the stated mass, m3, or null
 * @param startMass the stated mass, kg, or null
 * @returns kg, or null where one of them is not known
 */
export function massWith(now: number | null, first: number | null, startMass: number | null): number | null {
  return now === null || first === null || startMass === null
    ? null
    : startMass - (first - now) * gasolineDensity().value;
}
