/** A weighing from its card: scale readings by wheel and run, arms measured twice, fuel aboard. */
import { plainText } from '../line.ts';
import { type AboutFlight, type CardPoint, type CardPoints, lackingIn, pointOf } from './card-points.ts';
import type { CardReader } from './card-reader.ts';

/**
 * Readings of a weighing.
 * @param reader what was written
 * @param about where the fuel lies
 * @returns one set, or none where the card weighs nothing
 */
export function weighingPoints(reader: CardReader, about: AboutFlight): CardPoints[] {
  const { tables } = reader.card;
  const readings = tables.find((table) => table.columns.some((one) => one.key === 'scale-reading-run-1'));
  const arms = tables.find((table) => table.columns.some((one) => one.key === 'wheel-arm-first'));
  if (!readings || !arms) return [];
  const points: CardPoint[] = [];
  const remarks: string[] = [];
  readings.rows.forEach((row, i) => {
    const place = plainText(row.head);
    const armRow = arms.rows[i];
    const measured = (armRow ? ['wheel-arm-first', 'wheel-arm-second'] : []).flatMap((key) =>
      armRow ? (reader.cell(arms, armRow, key) ?? []) : [],
    );
    const [first] = measured;
    for (const run of [1, 2, 3]) {
      const reading = reader.cell(readings, row, `scale-reading-run-${run}`);
      if (!reading) continue;
      if (!first) {
        remarks.push(`${place}, run ${run} is left out: its arm is not written.`);
        continue;
      }
      const arm = measured.reduce((sum, one) => sum + one.value, 0) / measured.length;
      points.push(pointOf({ reading }, { role: 'weighing', run, place, arm: { value: arm, unit: first.stated.unit } }));
    }
  });
  const fluids = tables.find((table) => table.columns.some((one) => one.key === 'fluids-aboard'));
  const fuelRow = fluids?.rows.find((row) => plainText(row.head) === 'fuel');
  const fuel = fluids && fuelRow ? reader.cell(fluids, fuelRow, 'fluids-aboard') : null;
  if (fuel && fuel.value > 0) {
    if (about.fuelArm === null || lackingIn({ fuel }).nothing)
      remarks.push('Fuel aboard is not taken off: its arm is not in the description. Drain it, or state it by hand.');
    else
      points.push(
        pointOf({ volume: fuel }, { role: 'aboard', name: 'fuel', arm: { value: about.fuelArm, unit: 'm' } }),
      );
  }
  return [{ kind: 'weight-balance', title: '', points, remarks }];
}
