/** Airspeed against the speed over the ground: with wind about it, so it tells kilometres from knots and no more. */
import { median } from '../../numbers/index.ts';
import { toSi } from '../../units/index.ts';
import { type ScaledColumn, type ScaleEvidence, someRows } from './scale-evidence.ts';

/** Half as much again: a strong wind all the way, or thin air. */
const TOLERANCE = 0.4;
const SLOWEST = 20;

/**
 * What one speed says about the unit of another.
 * @param speed the column in question, values as written
 * @param reference a speed whose unit is taken as known
 * @returns evidence, or null where the airplane was hardly flown
 */
export function speedFromSpeed(speed: ScaledColumn, reference: ScaledColumn): ScaleEvidence | null {
  const { unit } = reference;
  if (unit === null) return null;
  const ratios = [...someRows(speed.numbers.length)].flatMap((row) => {
    const known = toSi(reference.numbers[row] ?? Number.NaN, unit);
    const written = speed.numbers[row] ?? Number.NaN;
    return known > SLOWEST && written > 0 ? [known / written] : [];
  });
  if (ratios.length < 20) return null;
  return { place: speed.place, factor: median(ratios), tolerance: TOLERANCE, by: `"${reference.column}"` };
}
